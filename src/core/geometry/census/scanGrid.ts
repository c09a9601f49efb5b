import type { RowSet } from './rowSet.ts'
import { createRowWriter } from './rowSet.ts'
import type { Outline } from './simplify.ts'

/**
 * The scan frame stands this much askew to x and y, so that edges along x or y, which most parts are made of, never run
 * in step with the rows: an edge parallel to the rows is a jump in the row lengths, whose area is wrong by up to half a
 * pitch times its length; askew it is a ramp, whose area is wrong by pitch² / 8 × the change of slope.
 * Small enough that rows still stand for lines laid along x and along y.
 */
export const SCAN_TILT_DEG = 3.7

/** Parallel rows over a layer; rows run along axis 0 (u) or along axis 1 (v). mm */
export interface ScanGrid {
  /** Coordinate the rows run along: 0 for u, 1 for v. */
  readonly along: 0 | 1
  readonly rows: number
  readonly pitchMm: number
  /** Edge of the grid before row 0, on the other coordinate. */
  readonly originMm: number
}

/** Rows across a part. More rows, less error (it falls with the square); fewer rows, less time. */
const ROWS_WANTED = 400
const FINEST_PITCH_MM = 0.02
const COARSEST_PITCH_MM = 0.15

export function planGrid(along: 0 | 1, lowMm: number, highMm: number, marginMm: number): ScanGrid {
  const low = lowMm - marginMm
  const span = highMm + marginMm - low
  const pitchMm = Math.min(COARSEST_PITCH_MM, Math.max(FINEST_PITCH_MM, span / ROWS_WANTED))
  const rows = Math.max(1, Math.ceil(span / pitchMm))
  return { along, rows, pitchMm, originMm: low - (rows * pitchMm - span) / 2 }
}

/** A region scanned along one axis. */
export interface ScannedRegion {
  readonly region: RowSet
  /** False where bodies overlap or face opposite ways, so that Green's theorem counts twice or cancels. */
  readonly simple: boolean
}

/** The inside of closed contours by the non-zero rule: overlapping bodies merge, inside-out ones count as solid. */
export function scanOutline(outline: Outline, grid: ScanGrid): ScannedRegion {
  const { points, start } = outline
  const crossings = collectCrossings(points, start, grid)
  const out = createRowWriter(grid.rows, crossings.at.length / 2)
  let most = 0
  let least = 0
  for (let row = 0; row < grid.rows; row++) {
    const begin = crossings.start[row]!
    const end = crossings.start[row + 1]!
    sortCrossings(crossings.at, crossings.sense, begin, end)
    let winding = 0
    let from = 0
    for (let i = begin; i < end; i++) {
      const before = winding
      winding += crossings.sense[i]!
      if (before === 0) from = crossings.at[i]!
      else if (winding === 0) out.add(from, crossings.at[i]!)
      if (winding > most) most = winding
      if (winding < least) least = winding
    }
    out.endRow()
  }
  return { region: out.finish(), simple: most - least <= 1 }
}

interface Crossings {
  readonly start: Int32Array
  readonly at: Float64Array
  /** +1 where the contour crosses the row upwards, −1 downwards. */
  readonly sense: Int8Array
}

function collectCrossings(points: Float64Array, start: Int32Array, grid: ScanGrid): Crossings {
  const { along, rows, pitchMm, originMm } = grid
  const across = 1 - along
  const rowStart = new Int32Array(rows + 2)
  forEachEdge(start, (i, j) => {
    const a = rowAbove(points[2 * i + across]!, originMm, pitchMm)
    const b = rowAbove(points[2 * j + across]!, originMm, pitchMm)
    for (let row = Math.min(a, b); row < Math.max(a, b); row++) rowStart[row + 2]!++
  })
  for (let row = 2; row <= rows + 1; row++) rowStart[row]! += rowStart[row - 1]!
  const total = rowStart[rows + 1]!
  const at = new Float64Array(total)
  const sense = new Int8Array(total)
  forEachEdge(start, (i, j) => {
    const pv = points[2 * i + across]!
    const qv = points[2 * j + across]!
    const a = rowAbove(pv, originMm, pitchMm)
    const b = rowAbove(qv, originMm, pitchMm)
    if (a === b) return
    const pu = points[2 * i + along]!
    const slope = (points[2 * j + along]! - pu) / (qv - pv)
    const direction = b > a ? 1 : -1
    for (let row = Math.min(a, b); row < Math.max(a, b); row++) {
      const slot = rowStart[row + 1]!++
      at[slot] = pu + (originMm + (row + 0.5) * pitchMm - pv) * slope
      sense[slot] = direction
    }
  })
  return { start: rowStart, at, sense }
}

/** Index of the first row at or above a coordinate. */
export function rowAbove(v: number, originMm: number, pitchMm: number): number {
  return Math.ceil((v - originMm) / pitchMm - 0.5)
}

/** Calls back with the two point numbers of every edge of closed contours. */
export function forEachEdge(start: Int32Array, visit: (from: number, to: number) => void): void {
  for (let c = 0; c + 1 < start.length; c++) {
    const begin = start[c]!
    const end = start[c + 1]!
    for (let i = begin; i < end; i++) visit(i, i + 1 < end ? i + 1 : begin)
  }
}

/** Insertion sort: rows hold a handful of crossings, mostly in order already. */
function sortCrossings(at: Float64Array, sense: Int8Array, begin: number, end: number): void {
  for (let i = begin + 1; i < end; i++) {
    const x = at[i]!
    const s = sense[i]!
    let j = i - 1
    while (j >= begin && at[j]! > x) {
      at[j + 1] = at[j]!
      sense[j + 1] = sense[j]!
      j--
    }
    at[j + 1] = x
    sense[j + 1] = s
  }
}
