import type { RowSet } from './rowSet.ts'
import { createRowWriter, emptyRows } from './rowSet.ts'
import type { ScanGrid } from './scanGrid.ts'
import { forEachEdge, rowAbove } from './scanGrid.ts'
import type { Outline } from './simplify.ts'

/**
 * Everything within `radiusMm` of the outline's edges, on the rows of a grid.
 *
 * An edge with its round ends is a convex shape, so a row meets it in one stretch, found exactly. Taking the band away
 * from a region insets it, adding it grows it: there is no offset curve that could cross itself and nothing to clean up.
 */
export function scanEdgeBand(outline: Outline, radiusMm: number, grid: ScanGrid): RowSet {
  const { points, start } = outline
  if (points.length === 0 || radiusMm <= 0) return emptyRows(grid.rows)
  const { along, rows, pitchMm, originMm } = grid
  const across = 1 - along
  const rowStart = new Int32Array(rows + 2)
  const firstRow = (v: number): number => Math.max(0, rowAbove(v - radiusMm, originMm, pitchMm))
  const pastRow = (v: number): number => Math.min(rows, rowAbove(v + radiusMm, originMm, pitchMm))

  forEachEdge(start, (i, j) => {
    const pv = points[2 * i + across]!
    const qv = points[2 * j + across]!
    const past = pastRow(Math.max(pv, qv))
    for (let row = firstRow(Math.min(pv, qv)); row < past; row++) rowStart[row + 2]!++
  })
  for (let row = 2; row <= rows + 1; row++) rowStart[row]! += rowStart[row - 1]!
  const total = rowStart[rows + 1]!
  const from = new Float64Array(total)
  const to = new Float64Array(total)
  const radius2 = radiusMm * radiusMm

  forEachEdge(start, (i, j) => {
    const pu = points[2 * i + along]!
    const pv = points[2 * i + across]!
    const qu = points[2 * j + along]!
    const qv = points[2 * j + across]!
    const du = qu - pu
    const dv = qv - pv
    const size = Math.hypot(du, dv) || 1
    // The two long sides: the edge moved by the radius along its normal, to the right (offU > 0) and to the left.
    const offU = (Math.abs(dv) / size) * radiusMm
    const offV = (dv > 0 ? -du / size : du / size) * radiusMm
    const slope = dv === 0 ? 0 : du / dv
    const low = Math.min(pv, qv)
    const high = Math.max(pv, qv)
    const past = pastRow(high)
    for (let row = firstRow(low); row < past; row++) {
      const v = originMm + (row + 0.5) * pitchMm
      let lo = Infinity
      let hi = -Infinity
      const pGap = radius2 - (v - pv) * (v - pv)
      if (pGap > 0) {
        const half = Math.sqrt(pGap)
        lo = pu - half
        hi = pu + half
      }
      const qGap = radius2 - (v - qv) * (v - qv)
      if (qGap > 0) {
        const half = Math.sqrt(qGap)
        if (qu - half < lo) lo = qu - half
        if (qu + half > hi) hi = qu + half
      }
      if (v - offV >= low && v - offV <= high) {
        const u = pu + (v - offV - pv) * slope + offU
        if (u > hi) hi = u
        if (u < lo) lo = u
      }
      if (v + offV >= low && v + offV <= high) {
        const u = pu + (v + offV - pv) * slope - offU
        if (u < lo) lo = u
        if (u > hi) hi = u
      }
      const slot = rowStart[row + 1]!++
      from[slot] = lo
      to[slot] = hi
    }
  })
  return mergeStretches(rowStart, from, to, rows)
}

function mergeStretches(
  rowStart: Int32Array,
  from: Float64Array,
  to: Float64Array,
  rows: number,
): RowSet {
  const out = createRowWriter(rows, rows * 4)
  for (let row = 0; row < rows; row++) {
    const begin = rowStart[row]!
    const end = rowStart[row + 1]!
    sortStretches(from, to, begin, end)
    for (let i = begin; i < end; i++) out.add(from[i]!, to[i]!)
    out.endRow()
  }
  return out.finish()
}

function sortStretches(from: Float64Array, to: Float64Array, begin: number, end: number): void {
  for (let i = begin + 1; i < end; i++) {
    const f = from[i]!
    const t = to[i]!
    let j = i - 1
    while (j >= begin && from[j]! > f) {
      from[j + 1] = from[j]!
      to[j + 1] = to[j]!
      j--
    }
    from[j + 1] = f
    to[j + 1] = t
  }
}
