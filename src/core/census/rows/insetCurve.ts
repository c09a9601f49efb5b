import type { BorrowedOutline, Outline } from '../cut/simplify.ts'
import { listCorners } from './listCorners.ts'

/** How far the curve may stray beyond its depth, at mitres and along arcs. mm */
const STRAY_MM = 0.002

/** u, v and the unit normal to the left of the edge that begins there, of one contour's points. */
let corners = new Float64Array(256)
/** 1 where the edges of a corner end in one mitre. */
let mitred = new Uint8Array(64)
let points = new Float64Array(1024)
let written = 0

/**
 * The outline moved `depthMm` to its left, or to its right where that is below 0, every edge by
 * itself: a curve that may cross itself and run backwards. Around a place it winds as often as the
 * outline does, less (moved right: more) the number of edges and corners whose strips and sectors
 * hold the place. With a solid to the left of its outline, it is therefore deeper than `depthMm`
 * where, and only where, the curve winds around at least once.
 *
 * An edge's strip is a rectangle. Two strips that leave a turn of an outline between them share a
 * mitre there, where that reaches hardly further and no strip is too short for it; else a turn away
 * from them is filled by an arc, and one towards them by going back over the outline's own corner,
 * so that no strip is ever inside out.
 *
 * Measured when it took the place of strips and discs taken away one by one (`scanEdgeBand`): a
 * third of their time, a fifth less for an arm's whole count (processor time, least of several).
 */
export function insetCurve(outline: Outline, depthMm: number): BorrowedOutline {
  written = 0
  const starts = [0]
  for (let c = 0; c + 1 < outline.start.length; c++) {
    const [begin, end] = [outline.start[c]!, outline.start[c + 1]!]
    if (mitred.length < end - begin) {
      corners = new Float64Array(8 * (end - begin))
      mitred = new Uint8Array(2 * (end - begin))
    }
    const count = listCorners(outline.points, begin, end, 0, corners)
    chooseMitres(count, depthMm)
    for (let i = 0; i < count; i++) turnCorner(i > 0 ? i - 1 : count - 1, i, depthMm)
    starts.push(written / 2)
  }
  return { points: points.subarray(0, written), start: Int32Array.from(starts) }
}

/** 1 + the cosine of the turn between two edges, which is 2·cos²(half the turn). */
function turnSum(before: number, at: number): number {
  return (
    1 +
    corners[4 * before + 2]! * corners[4 * at + 2]! +
    corners[4 * before + 3]! * corners[4 * at + 3]!
  )
}

/** The sine of the turn between two edges, to the left. */
function turnSine(before: number, at: number): number {
  return (
    corners[4 * before + 2]! * corners[4 * at + 3]! -
    corners[4 * before + 3]! * corners[4 * at + 2]!
  )
}

function chooseMitres(count: number, depthMm: number): void {
  // The mitre is as long as the depth ÷ cos(half the turn).
  const radiusMm = Math.abs(depthMm)
  const leastCosine = radiusMm / (radiusMm + STRAY_MM)
  const leastSum = 2 * leastCosine * leastCosine
  for (let i = 0; i < count; i++) {
    mitred[i] = turnSum(i > 0 ? i - 1 : count - 1, i) >= leastSum ? 1 : 0
  }
  // What the mitres at both of its ends take off an edge must not be more than there is.
  for (let i = 0; i < count; i++) {
    const next = i + 1 < count ? i + 1 : 0
    if (!mitred[i] && !mitred[next]) continue
    const u = corners[4 * next]! - corners[4 * i]!
    const v = corners[4 * next + 1]! - corners[4 * i + 1]!
    const taken =
      Math.max(0, takenAt(i > 0 ? i - 1 : count - 1, i, depthMm)) +
      Math.max(0, takenAt(i, next, depthMm))
    if (taken * taken > u * u + v * v) {
      mitred[i] = 0
      mitred[next] = 0
    }
  }
}

/** What a mitre takes off both edges: depth × tan(half the turn towards it). */
function takenAt(before: number, at: number, depthMm: number): number {
  return (depthMm * turnSine(before, at)) / turnSum(before, at)
}

/** Goes from the end of one moved edge to the beginning of the next. */
function turnCorner(before: number, at: number, depthMm: number): void {
  const u = corners[4 * at]!
  const v = corners[4 * at + 1]!
  const beforeU = corners[4 * before + 2]!
  const beforeV = corners[4 * before + 3]!
  const afterU = corners[4 * at + 2]!
  const afterV = corners[4 * at + 3]!
  const sum = turnSum(before, at)
  if (mitred[at]) {
    const scale = depthMm / sum
    addPoint(u + (beforeU + afterU) * scale, v + (beforeV + afterV) * scale)
    return
  }
  const sine = turnSine(before, at)
  addPoint(u + beforeU * depthMm, v + beforeV * depthMm)
  if (sine * depthMm > 0) addPoint(u, v)
  else addArc(u, v, beforeU, beforeV, Math.atan2(Math.abs(sine), sum - 1), depthMm)
  addPoint(u + afterU * depthMm, v + afterV * depthMm)
}

/**
 * An arc from the normal at hand on by `angle`, away from the moved side, of mitres that stray as
 * far as they may: where they touch, it is as deep as it should.
 */
function addArc(
  u: number,
  v: number,
  normalU: number,
  normalV: number,
  angle: number,
  depthMm: number,
): void {
  const radiusMm = Math.abs(depthMm)
  const most = 2 * Math.acos(radiusMm / (radiusMm + STRAY_MM))
  const pieces = Math.max(1, Math.ceil(angle / most))
  const half = angle / pieces / 2
  const reach = depthMm / Math.cos(half)
  const sense = depthMm > 0 ? -1 : 1
  for (let k = 0; k < pieces; k++) {
    const turned = sense * (2 * k + 1) * half
    const cosine = Math.cos(turned)
    const sine = Math.sin(turned)
    addPoint(
      u + (normalU * cosine - normalV * sine) * reach,
      v + (normalU * sine + normalV * cosine) * reach,
    )
  }
}

function addPoint(u: number, v: number): void {
  if (points.length < written + 2) {
    const longer = new Float64Array(2 * points.length)
    longer.set(points)
    points = longer
  }
  points[written++] = u
  points[written++] = v
}
