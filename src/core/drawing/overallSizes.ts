import type { Bounds, Vec3 } from '../model/mesh.ts'
import { onSheet } from './onSheet.ts'
import type { Point } from './placeLeaders.ts'
import type { LineDrawing } from './types.ts'

/**
 * A size as engineers draw it: a line with arrows, between two lines that lead out from what is
 * measured. px
 */
export interface Dimension {
  readonly axis: 'x' | 'y' | 'z'
  readonly lengthMm: number
  readonly from: Point
  readonly to: Point
  /** From near the part to a little past the dimension line. */
  readonly extensions: readonly [Stretch, Stretch]
  /**
   * Where the figure's foot has its middle and how it is turned: it reads from below or from the
   * right.
   */
  readonly figure: Point & { readonly angleDeg: number }
}

export type Stretch = readonly [Point, Point]

/** The line stands so far off the box. px */
const OFF_PX = 20
/**
 * Free between the part and where a line leads out; and how far it goes on past the dimension line.
 * px
 */
const GAP_PX = 3
const PAST_PX = 4
/** Between the dimension line and its figure. px */
const FOOT_PX = 4
/**
 * An axis that shows less of its length than this points at the eye: a size along it would mislead.
 */
const LEAST_SHOWN = 0.3
/** Lines that lead out more aslant than this (sine) lie along what they measure. */
const LEAST_ACROSS = 0.35
/** A shorter size has no room for its arrows. px */
const LEAST_PX = 12
/** A long line has its figure so far along it: the middle is where a part is cut first. */
const FIGURE_AT = 0.36
const LONG_PX = 70
/**
 * A line shorter than its figure and two arrows has the figure on its far side, past what leads out
 * (ISO 129-1).
 */
const SHORT_PX = 34
/** Height of a figure. px */
const FIGURE_PX = 9
const EDGE_PX = 6
const AXES = ['x', 'y', 'z'] as const

/**
 * The sizes of the box round a part, each once and outside of it, along the sides of the box; those
 * along axes that point at the eye are left out, and those that find no room on the sheet.
 * ISO 129-1 has the form; figures stand above their lines, those of short ones on the far side.
 */
export function overallSizes(drawing: LineDrawing, boundsMm: Bounds): readonly Dimension[] {
  return AXES.flatMap((_, k) => {
    const all = candidates(drawing, boundsMm, k)
    const [best] = all.toSorted((a, b) => worth(b) - worth(a))
    return best === undefined ? [] : [best]
  })
}

/** Below what lies level, right of what stands. */
function worth({ from, to }: Dimension): number {
  const isSteep = Math.abs(to.y - from.y) > 2 * Math.abs(to.x - from.x)
  return isSteep ? from.x + to.x : from.y + to.y
}

function candidates(drawing: LineDrawing, { min, max }: Bounds, k: number): readonly Dimension[] {
  const { scale } = drawing
  const lengthMm = max[k]! - min[k]!
  const origin = onSheet(drawing, [0, 0, 0])
  const stepOf = (axis: number): Point => {
    const unit = [0, 0, 0].map((_, each) => (each === axis ? 1 : 0)) as [number, number, number]
    const [x, y] = onSheet(drawing, unit)
    return { x: (x - origin[0]) / scale, y: (y - origin[1]) / scale }
  }
  const along = stepOf(k)
  const shown = Math.hypot(along.x, along.y)
  if (shown < LEAST_SHOWN || lengthMm * shown * scale < LEAST_PX) return []
  const across = { x: -along.y / shown, y: along.x / shown }
  const corners = boxCorners(min, max).map((corner) => pointOn(drawing, corner))
  const others = [0, 1, 2].filter((axis) => axis !== k)
  return boxCorners(min, max)
    .filter((corner) => corner[k] === min[k])
    .flatMap((corner) => {
      const start = pointOn(drawing, corner)
      const end = pointOn(drawing, corner.map((v, i) => (i === k ? max[k]! : v)) as unknown as Vec3)
      return others.flatMap((axis): Dimension[] => {
        const step = stepOf(axis)
        const size = Math.hypot(step.x, step.y)
        if (size < LEAST_SHOWN) return []
        const sign = corner[axis] === max[axis] ? 1 : -1
        const out = { x: (sign * step.x) / size, y: (sign * step.y) / size }
        const slope = out.x * across.x + out.y * across.y
        if (Math.abs(slope) < LEAST_ACROSS) return []
        const side = Math.sign(slope)
        const beyond = (p: Point): number =>
          side * ((p.x - start.x) * across.x + (p.y - start.y) * across.y)
        if (corners.some((each) => beyond(each) > 0.5)) return []
        const made = dimensionFrom(AXES[k]!, lengthMm, start, end, out, OFF_PX / Math.abs(slope))
        return fits(made, drawing) ? [made] : []
      })
    })
}

function dimensionFrom(
  axis: Dimension['axis'],
  lengthMm: number,
  start: Point,
  end: Point,
  out: Point,
  offPx: number,
): Dimension {
  const moved = (p: Point, by: number): Point => ({ x: p.x + by * out.x, y: p.y + by * out.y })
  const leadOut = (p: Point): Stretch => [moved(p, GAP_PX), moved(p, offPx + PAST_PX)]
  const from = moved(start, offPx)
  const to = moved(end, offPx)
  const angle = readable(Math.atan2(to.y - from.y, to.x - from.x))
  const longPx = Math.hypot(to.x - from.x, to.y - from.y)
  const at = longPx < LONG_PX ? 0.5 : FIGURE_AT
  const up = { x: Math.sin(angle), y: -Math.cos(angle) }
  const isOutUp = out.x * up.x + out.y * up.y > 0
  const pastPx = FOOT_PX + PAST_PX
  const footPx = longPx >= SHORT_PX ? FOOT_PX : isOutUp ? pastPx : -pastPx - FIGURE_PX
  const figure = {
    x: from.x + at * (to.x - from.x) + footPx * up.x,
    y: from.y + at * (to.y - from.y) + footPx * up.y,
    angleDeg: (angle * 180) / Math.PI,
  }
  return { axis, lengthMm, from, to, extensions: [leadOut(start), leadOut(end)], figure }
}

/** Turned by half a turn where it would stand on its head; upright it reads from the right. */
function readable(angle: number): number {
  const half = Math.PI / 2
  if (angle >= half - 1e-6) return angle - Math.PI
  return angle < -half - 1e-6 ? angle + Math.PI : angle
}

function fits({ extensions, figure }: Dimension, { widthPx, heightPx }: LineDrawing): boolean {
  return [...extensions.map(([, end]) => end), figure].every(({ x, y }) => {
    const isWithin = x >= EDGE_PX && x <= widthPx - EDGE_PX
    return isWithin && y >= EDGE_PX && y <= heightPx - EDGE_PX
  })
}

function boxCorners(min: Vec3, max: Vec3): readonly Vec3[] {
  return [min[0], max[0]].flatMap((x) =>
    [min[1], max[1]].flatMap((y) => [min[2], max[2]].map((z): Vec3 => [x, y, z])),
  )
}

function pointOn(drawing: LineDrawing, corner: Vec3): Point {
  const [x, y] = onSheet(drawing, corner)
  return { x, y }
}
