import type { Vec3 } from '../model/mesh.ts'
import { boxInView, type ViewBox } from './boxInView.ts'
import type { DrawnPiece, Motion, View } from './types.ts'
import { viewAxes } from './viewAxes.ts'

/** A piece whose place on the frame nobody said: it lies beside the frame, as it was drawn. */
export type LoosePiece = Omit<DrawnPiece, 'motion'> & {
  /** Unit of its mesh, mm. */
  readonly scaleToMm: number
}

/** How long a step of a piece with a way of its own is then, as a share of the frame. */
const STEP_SHARE = 0.22
/** Way between loose pieces, and between them and the frame, as a share of the largest. */
const GAP_SHARE = 0.12
/** How much farther from the middle pieces stand when all is drawn apart. */
const APART = 0.9

/**
 * Puts everything of a frame into one view: pieces with a place where they are, or as far on their
 * own way, or away from the middle, as `apart` (0–1) says; loose ones in rows below them, on the
 * sheet's own axes, so that all are at one scale.
 */
export function arrange(
  placed: readonly DrawnPiece[],
  loose: readonly LoosePiece[],
  view: View,
  apart: number,
): readonly DrawnPiece[] {
  const standing = apart > 0 ? drawApart(placed, apart) : placed
  return [...standing, ...layLoose(standing, loose, view)]
}

function drawApart(placed: readonly DrawnPiece[], apart: number): readonly DrawnPiece[] {
  const centres = placed.map(centreOf)
  const ends = [0, 1, 2].map((k) => {
    const along = centres.map((centre) => centre[k] ?? 0)
    return [Math.min(...along), Math.max(...along)] as const
  })
  const stepMm = STEP_SHARE * Math.hypot(...ends.map(([low, high]) => high - low))
  return placed.map((piece, i) => {
    const [x, y, z] = ends.map(([low, high], k) =>
      piece.way === undefined
        ? APART * apart * ((centres[i]?.[k] ?? 0) - (low + high) / 2)
        : stepMm * apart * (piece.way[k] ?? 0),
    ) as [number, number, number]
    return { ...piece, motion: shifted(piece.motion, [x, y, z]) }
  })
}

/** Middle of a piece's box, in the frame's axes. */
function centreOf({ mesh: { positions, indices }, motion: m }: DrawnPiece): Vec3 {
  const low = [Infinity, Infinity, Infinity]
  const high = [-Infinity, -Infinity, -Infinity]
  for (const v of indices) {
    for (let k = 0; k < 3; k++) {
      const value = positions[3 * v + k]!
      if (value < low[k]!) low[k] = value
      if (value > high[k]!) high[k] = value
    }
  }
  const [x = 0, y = 0, z = 0] = low.map((value, k) => (value + high[k]!) / 2)
  return [
    m[0] * x + m[1] * y + m[2] * z + m[3],
    m[4] * x + m[5] * y + m[6] * z + m[7],
    m[8] * x + m[9] * y + m[10] * z + m[11],
  ]
}

function layLoose(
  standing: readonly DrawnPiece[],
  loose: readonly LoosePiece[],
  view: View,
): readonly DrawnPiece[] {
  const { right, up } = viewAxes(view)
  const pieces = loose.map(({ item, mesh, scaleToMm: s }): { piece: DrawnPiece; box: ViewBox } => {
    const piece = { item, mesh, motion: [s, 0, 0, 0, 0, s, 0, 0, 0, 0, s, 0] as const }
    return { piece, box: boxInView([piece], view) }
  })
  const own = standing.length === 0 ? null : boxInView(standing, view)
  const sizes = pieces.map(({ box }) => ({
    width: box.right - box.left,
    height: box.top - box.bottom,
  }))
  const largest = Math.max(0, ...sizes.map(({ width, height }) => Math.max(width, height)))
  const gap = GAP_SHARE * largest
  // Beside a frame one row as wide as it is; on their own, rows that make the whole about as wide
  // as high.
  const area = sizes.reduce((sum, { width, height }) => sum + (width + gap) * (height + gap), 0)
  const wide = Math.max(own === null ? Math.sqrt(1.5 * area) : own.right - own.left, largest)
  const leftEdge = own?.left ?? 0
  let x = leftEdge
  let top = (own?.bottom ?? 0) - (own === null ? 0 : gap)
  let rowHeight = 0
  return pieces.map(({ piece, box }, i) => {
    const { width, height } = sizes[i]!
    if (x > leftEdge && x + width > leftEdge + wide) {
      x = leftEdge
      top -= rowHeight + gap
      rowHeight = 0
    }
    const across = x - box.left
    const upwards = top - box.top
    x += width + gap
    rowHeight = Math.max(rowHeight, height)
    const by = [0, 1, 2].map((k) => across * right[k]! + upwards * up[k]!) as [
      number,
      number,
      number,
    ]
    return { ...piece, motion: shifted(piece.motion, by) }
  })
}

function shifted(motion: Motion, [x, y, z]: Vec3): Motion {
  const moved = [...motion] as unknown as { -readonly [K in keyof Motion]: Motion[K] }
  moved[3] += x
  moved[7] += y
  moved[11] += z
  return moved
}
