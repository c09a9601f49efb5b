import type { ProjectedPiece, Projection } from './project.ts'
import type { Tone } from './types.ts'

/** What is seen in each sample, row by row from the top left. */
export interface Painted {
  readonly width: number
  readonly height: number
  /** Samples a px along each side. */
  readonly samples: number
  /** Towards the eye, mm; −∞ where nothing is. */
  readonly depth: Float32Array
  /** 4 · item + tone + 1; 0 where nothing is. */
  readonly label: Uint16Array
}

/**
 * The frame's upright axis in a view: up the sheet and towards the eye. Faces up are light whatever
 * the view.
 */
type Up = readonly [onSheet: number, toEye: number]

/** Light over the left shoulder, in view axes: right, up, towards the eye. */
const LIGHT = unit(-0.42, 0.74, 0.53)
/** Faces whose cosine to the light reaches these are of tone 0, 1, 2; the rest of tone 3. */
const TONE_FROM = [0.72, 0.38, 0.05] as const
/** Labels are 16 bits: items beyond this share the last number. */
const MOST_ITEMS = 16_000

/** The nearest face in every sample. Both sides of a face are drawn, so open meshes show too. */
export function paint(
  { pieces, scale, axes }: Projection,
  widthPx: number,
  heightPx: number,
  samples: number,
): Painted {
  const width = Math.max(1, Math.round(widthPx * samples))
  const height = Math.max(1, Math.round(heightPx * samples))
  const painted: Painted = {
    width,
    height,
    samples,
    depth: new Float32Array(width * height).fill(-Infinity),
    label: new Uint16Array(width * height),
  }
  const up: Up = [axes.up[2], axes.toEye[2]]
  for (const piece of pieces) paintPiece(painted, piece, scale, up)
  return painted
}

function paintPiece(painted: Painted, piece: ProjectedPiece, scale: number, up: Up): void {
  const { width, height, samples, depth, label } = painted
  const { x, y, depth: z, mesh } = piece
  const { indices } = mesh
  const base = 4 * Math.min(piece.item, MOST_ITEMS) + 1
  for (let i = 0; i + 2 < indices.length; i += 3) {
    const a = indices[i]!
    const b = indices[i + 1]!
    const c = indices[i + 2]!
    const ax = x[a]! * samples
    const ay = y[a]! * samples
    const bx = x[b]! * samples
    const by = y[b]! * samples
    const cx = x[c]! * samples
    const cy = y[c]! * samples
    const left = Math.max(0, Math.ceil(Math.min(ax, bx, cx) - 0.5))
    const right = Math.min(width - 1, Math.floor(Math.max(ax, bx, cx) - 0.5))
    if (left > right) continue
    const top = Math.max(0, Math.ceil(Math.min(ay, by, cy) - 0.5))
    const bottom = Math.min(height - 1, Math.floor(Math.max(ay, by, cy) - 0.5))
    if (top > bottom) continue
    const area = (bx - ax) * (cy - ay) - (by - ay) * (cx - ax)
    if (area === 0) continue
    const az = z[a]!
    const bz = z[b]!
    const cz = z[c]!
    const wbX = (cy - ay) / area
    const wbY = -(cx - ax) / area
    const wcX = -(by - ay) / area
    const wcY = (bx - ax) / area
    const zX = wbX * (bz - az) + wcX * (cz - az)
    const zY = wbY * (bz - az) + wcY * (cz - az)
    // Slopes are in mm a sample; times samples · scale they are true, and (−slope, 1) is the normal
    // that faces the eye.
    const own = base + toneOf(zX * samples * scale, -zY * samples * scale, up)
    for (let row = top; row <= bottom; row++) {
      const dy = row + 0.5 - ay
      // The stretch of this row inside the triangle, from its three half-planes.
      let from = left
      let to = right
      for (let side = 0; side < 3; side++) {
        const slope = side === 0 ? wbX : side === 1 ? wcX : -wbX - wcX
        const rest = side === 0 ? wbY * dy : side === 1 ? wcY * dy : 1 - (wbY + wcY) * dy
        const bound = ax - 0.5 - (rest + SLACK) / slope
        if (slope > 0) from = Math.max(from, Math.ceil(bound))
        else if (slope < 0) to = Math.min(to, Math.floor(bound))
        else if (rest < -SLACK) to = -1
      }
      let here = az + zX * (from + 0.5 - ax) + zY * dy
      for (let at = row * width + from; at <= row * width + to; at++, here += zX) {
        if (here <= depth[at]!) continue
        depth[at] = here
        label[at] = own
      }
    }
  }
}

/** Rounding room for samples exactly on a shared edge, as a share of the triangle. */
const SLACK = 1e-6

/** Tone of a face from its slopes to the right and up, mm towards the eye a mm. */
function toneOf(slopeRight: number, slopeUp: number, [upOnSheet, upToEye]: Up): Tone {
  const length = Math.hypot(slopeRight, slopeUp, 1)
  const lamp = (-slopeRight * LIGHT[0] - slopeUp * LIGHT[1] + LIGHT[2]) / length
  const light = Math.max(lamp, (-slopeUp * upOnSheet + upToEye) / length)
  if (light >= TONE_FROM[0]) return 0
  if (light >= TONE_FROM[1]) return 1
  return light >= TONE_FROM[2] ? 2 : 3
}

function unit(x: number, y: number, z: number): readonly [number, number, number] {
  const length = Math.hypot(x, y, z)
  return [x / length, y / length, z / length]
}
