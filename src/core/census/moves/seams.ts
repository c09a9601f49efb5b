import { SCAN_TILT_DEG } from '../rows/scanGrid.ts'
import type { Outline } from '../cut/simplify.ts'

/** Where the wall lines around each contour may begin and end. */
export interface Seams {
  /** Places of contour c: `start[c]` up to `start[c + 1]`. */
  readonly start: Int32Array
  /**
   * x, y of the place on the outline, then the way into the part that goes one mm deeper; stride 4.
   * mm
   */
  readonly places: Float64Array
  /**
   * x, y and radius of a circle around the places of each contour and their ways in; stride 3. mm
   */
  readonly middle: Float64Array
}

/**
 * A corner hides a seam well enough when it is at least this share as sharp as the sharpest of its
 * contour.
 */
const SHARP_ENOUGH = 0.8
/** More places than this around one contour are thinned out: the next one is never far. */
const MOST_PLACES = 48
/**
 * At a point like a needle's, the way in that goes one mm deeper is taken no longer than this. mm
 */
const LONGEST_WAY_IN = 12

const SIN = Math.sin((SCAN_TILT_DEG * Math.PI) / 180)
const COS = Math.cos((SCAN_TILT_DEG * Math.PI) / 180)

/** The edges before and after the corner at hand: u, v. */
const edgeIn = new Float64Array(2)
const edgeOut = new Float64Array(2)
/** Places found so far, as in `Seams`; used again for every outline. */
let places = new Float64Array(1024)

/** σ = sin(half the turn) at every point of an outline. */
export function turnsOf(outline: Outline): Float64Array {
  const { points, start } = outline
  const turns = new Float64Array(points.length / 2)
  for (let c = 0; c + 1 < start.length; c++) {
    const begin = start[c]!
    const end = start[c + 1]!
    let u = points[2 * begin]! - points[2 * end - 2]!
    let v = points[2 * begin + 1]! - points[2 * end - 1]!
    let size = Math.sqrt(u * u + v * v)
    for (let i = begin; i < end; i++) {
      const next = i + 1 < end ? i + 1 : begin
      const outU = points[2 * next]! - points[2 * i]!
      const outV = points[2 * next + 1]! - points[2 * i + 1]!
      const outSize = Math.sqrt(outU * outU + outV * outV)
      const cosine = (u * outU + v * outV) / (size * outSize || 1)
      turns[i] = Math.sqrt(Math.max(0, (1 - cosine) / 2))
      u = outU
      v = outV
      size = outSize
    }
  }
  return turns
}

/**
 * The sharpest corners of every contour, as places. The part lies to the left of its outline. The
 * way in halves the angle between the edges `depthMm` before and after the corner: deeper lines do
 * not see that a tip is blunt. Round a hollow deeper lines are longer and see all of it.
 */
export function findSeams(outline: Outline, turns: Float64Array, depthMm: number): Seams {
  const { points, start } = outline
  const starts = new Int32Array(start.length)
  let written = 0
  for (let c = 0; c + 1 < start.length; c++) {
    const begin = start[c]!
    const end = start[c + 1]!
    let enough = 0
    for (let i = begin; i < end; i++) enough = Math.max(enough, SHARP_ENOUGH * turns[i]!)
    let count = 0
    for (let i = begin; i < end; i++) if (turns[i]! >= enough) count++
    const every = Math.ceil(count / MOST_PLACES)
    let seen = 0
    for (let i = begin; i < end; i++) {
      if (turns[i]! < enough || seen++ % every !== 0) continue
      edgeAway(points, begin, end, i, -1, 0, edgeIn)
      edgeAway(points, begin, end, i, 1, 0, edgeOut)
      if (edgeIn[0]! * edgeOut[1]! - edgeIn[1]! * edgeOut[0]! > 0) {
        edgeAway(points, begin, end, i, -1, depthMm, edgeIn)
        edgeAway(points, begin, end, i, 1, depthMm, edgeOut)
      }
      written = addPlace(points, i, written)
    }
    starts[c + 1] = written / 4
  }
  return {
    start: starts,
    places: places.slice(0, written),
    middle: circlesAround(starts, depthMm),
  }
}

function circlesAround(start: Int32Array, depthMm: number): Float64Array {
  const circles = new Float64Array(3 * (start.length - 1))
  for (let c = 0; c + 1 < start.length; c++) {
    const count = start[c + 1]! - start[c]!
    let x = 0
    let y = 0
    for (let i = 4 * start[c]!; i < 4 * start[c + 1]!; i += 4) {
      x += places[i]! / count
      y += places[i + 1]! / count
    }
    let radius = 0
    for (let i = 4 * start[c]!; i < 4 * start[c + 1]!; i += 4) {
      const away = lengthOf(places[i]! - x, places[i + 1]! - y)
      radius = Math.max(radius, away + depthMm * lengthOf(places[i + 2]!, places[i + 3]!))
    }
    circles.set([x, y, radius], 3 * c)
  }
  return circles
}

/**
 * Math.hypot guards against overflow, which millimetres do not need, and takes ten times as long.
 */
const lengthOf = (u: number, v: number): number => Math.sqrt(u * u + v * v)

/**
 * The contour edge that lies `awayMm` along from point `at`, in walking order, into `into` as u, v.
 */
function edgeAway(
  points: Float64Array,
  begin: number,
  end: number,
  at: number,
  sense: 1 | -1,
  awayMm: number,
  into: Float64Array,
): void {
  let here = at
  let left = awayMm
  for (let k = begin; k < end; k++) {
    const next = sense > 0 ? (here + 1 < end ? here + 1 : begin) : here > begin ? here - 1 : end - 1
    const u = sense * (points[2 * next]! - points[2 * here]!)
    const v = sense * (points[2 * next + 1]! - points[2 * here + 1]!)
    left -= Math.sqrt(u * u + v * v)
    into[0] = u
    into[1] = v
    if (left <= 0) return
    here = next
  }
}

/** Writes the place between the edges at hand; returns where the next one goes. */
function addPlace(points: Float64Array, at: number, written: number): number {
  const inU = edgeIn[0]!
  const inV = edgeIn[1]!
  const outU = edgeOut[0]!
  const outV = edgeOut[1]!
  const u = points[2 * at]!
  const v = points[2 * at + 1]!
  const inMm = Math.sqrt(inU * inU + inV * inV) || 1
  const outMm = Math.sqrt(outU * outU + outV * outV) || 1
  // The two left normals added: as long as 2·cos(half the turn), and the way in is 1/cos(half the
  // turn).
  const sumU = -inV / inMm - outV / outMm
  const sumV = inU / inMm + outU / outMm
  const square = Math.max(sumU * sumU + sumV * sumV, 1e-9)
  const way = Math.min(2 / square, LONGEST_WAY_IN / Math.sqrt(square))
  if (places.length < written + 4) {
    const longer = new Float64Array(2 * places.length)
    longer.set(places)
    places = longer
  }
  places[written] = u * COS - v * SIN
  places[written + 1] = u * SIN + v * COS
  places[written + 2] = (sumU * COS - sumV * SIN) * way
  places[written + 3] = (sumU * SIN + sumV * COS) * way
  return written + 4
}
