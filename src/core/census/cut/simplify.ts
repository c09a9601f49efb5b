import type { Borrowed } from '../../model/borrowed.ts'
import type { Contours } from './contours.ts'
import { greenArea } from './contours.ts'

/** Closed contours with only the points that matter; see `Contours` for the layout. */
export interface Outline {
  readonly points: Float64Array
  readonly start: Int32Array
}

/** An outline in memory that is used again. */
export interface BorrowedOutline {
  readonly points: Borrowed<Float64Array>
  readonly start: Int32Array
}

/**
 * Drops points that lie within `toleranceMm` of the line past them, in one walk with a narrowing
 * cone of allowed directions (linear time). Each contour begins at its leftmost point, so that
 * layers of the same shape give the same list whatever triangles they came from. Contours that
 * shrink to nothing are left out.
 */
export function simplifyContours(contours: Contours, toleranceMm: number): Outline {
  const { points, start } = contours
  const out = new Float64Array(points.length)
  const starts: number[] = [0]
  let written = 0
  for (let c = 0; c + 1 < start.length; c++) {
    const begin = written
    written = simplifyOne(points, start[c]!, start[c + 1]!, toleranceMm, out, written)
    const tooSmall = Math.abs(greenArea(out, begin, written)) < toleranceMm * toleranceMm
    if (written - begin < 6 || tooSmall) written = begin
    else starts.push(written / 2)
  }
  return { points: out.slice(0, written), start: new Int32Array(starts) }
}

function simplifyOne(
  points: Float64Array,
  begin: number,
  end: number,
  tolerance: number,
  out: Float64Array,
  outAt: number,
): number {
  const count = end - begin
  if (count < 3) return outAt
  let leftmost = begin
  for (let i = begin + 1; i < end; i++) {
    const du = points[2 * i]! - points[2 * leftmost]!
    if (du < 0 || (du === 0 && points[2 * i + 1]! < points[2 * leftmost + 1]!)) leftmost = i
  }
  const first = leftmost - begin
  let at = outAt
  let anchorU = points[2 * leftmost]!
  let anchorV = points[2 * leftmost + 1]!
  out[at++] = anchorU
  out[at++] = anchorV
  let lastU = anchorU
  let lastV = anchorV
  // The cone of directions from the anchor that pass every point so far within the tolerance; open
  // while its middle is 0, 0.
  let lowU = 0
  let lowV = 0
  let highU = 0
  let highV = 0
  let open = true
  for (let k = 1; k <= count; k++) {
    const i = begin + ((first + k) % count)
    const pu = points[2 * i]!
    const pv = points[2 * i + 1]!
    let du = pu - anchorU
    let dv = pv - anchorV
    const inCone = open || (lowU * dv - lowV * du >= 0 && du * highV - dv * highU >= 0)
    const backwards =
      !open &&
      du * (lastU - anchorU) + dv * (lastV - anchorV) <
        (lastU - anchorU) ** 2 + (lastV - anchorV) ** 2
    if (!inCone || backwards) {
      out[at++] = lastU
      out[at++] = lastV
      anchorU = lastU
      anchorV = lastV
      du = pu - anchorU
      dv = pv - anchorV
      open = true
    }
    const distance = Math.sqrt(du * du + dv * dv)
    if (distance > tolerance) {
      const slack = tolerance / distance
      const au = du + dv * slack
      const av = dv - du * slack
      const bu = du - dv * slack
      const bv = dv + du * slack
      if (open || lowU * av - lowV * au > 0) {
        lowU = au
        lowV = av
      }
      if (open || bu * highV - bv * highU > 0) {
        highU = bu
        highV = bv
      }
      open = false
    }
    lastU = pu
    lastV = pv
  }
  return at
}

/** Whether two outlines are the same shape at the same place, to far below what can be printed. */
export function sameOutline(a: Outline, b: Outline): boolean {
  if (a.points.length !== b.points.length || a.start.length !== b.start.length) return false
  for (let i = 0; i < a.start.length; i++) if (a.start[i] !== b.start[i]) return false
  for (let i = 0; i < a.points.length; i++) {
    if (Math.abs(a.points[i]! - b.points[i]!) > SAME_MM) return false
  }
  return true
}

/**
 * A quarter of the tolerance that outlines are simplified by. Layers are held against the first of
 * their shape, so a taper cannot add it up; an area is off by at most this times its outline.
 */
const SAME_MM = 5e-4
