import type { RowSet } from './rowSet.ts'
import { emptyRows, LEAST_SPAN_MM } from './rowSet.ts'
import type { ScanGrid } from './scanGrid.ts'
import { endsToStarts, rowAbove } from './scanGrid.ts'
import { createScratch } from './scratch.ts'
import type { Outline } from './simplify.ts'

const stretchSpace = createScratch()
const rowSpace = createScratch()

/**
 * Everything within `radiusMm` of the outline's edges, on the rows of a grid.
 *
 * An edge with its round ends is a convex shape, so a row meets it in one stretch, found exactly. Taking the band away
 * from a region insets it, adding it grows it: there is no offset curve that could cross itself and nothing to clean up.
 */
export function scanEdgeBand(outline: Outline, radiusMm: number, grid: ScanGrid): RowSet {
  const { points, start } = outline
  const { along, rows, pitchMm, originMm } = grid
  if (points.length === 0 || radiusMm <= 0) return emptyRows(rows)
  const across = 1 - along
  const next = rowSpace.ints(rows + 2)
  next.fill(0, 0, rows + 2)
  const clamp = (row: number): number => (row < 0 ? 0 : row > rows ? rows : row)

  for (let c = 0; c + 1 < start.length; c++) {
    let before = start[c + 1]! - 1
    for (let i = start[c]!; i < start[c + 1]!; before = i++) {
      const pv = points[2 * before + across]!
      const qv = points[2 * i + across]!
      const low = pv < qv ? pv : qv
      const high = pv < qv ? qv : pv
      next[clamp(rowAbove(low - radiusMm, originMm, pitchMm)) + 1]!++
      next[clamp(rowAbove(high + radiusMm, originMm, pitchMm)) + 1]!--
    }
  }
  const total = endsToStarts(next, rows)
  const stretches = stretchSpace.floats(2 * total)
  const radius2 = radiusMm * radiusMm

  for (let c = 0; c + 1 < start.length; c++) {
    let before = start[c + 1]! - 1
    for (let i = start[c]!; i < start[c + 1]!; before = i++) {
      const pu = points[2 * before + along]!
      const pv = points[2 * before + across]!
      const qu = points[2 * i + along]!
      const qv = points[2 * i + across]!
      const du = qu - pu
      const dv = qv - pv
      const size = Math.sqrt(du * du + dv * dv) || 1
      // The two long sides: the edge moved by the radius along its normal, towards + and towards −.
      const offU = ((dv < 0 ? -dv : dv) / size) * radiusMm
      const offV = ((dv > 0 ? -du : du) / size) * radiusMm
      const slope = dv === 0 ? 0 : du / dv
      const low = pv < qv ? pv : qv
      const high = pv < qv ? qv : pv
      const past = clamp(rowAbove(high + radiusMm, originMm, pitchMm))
      for (let row = clamp(rowAbove(low - radiusMm, originMm, pitchMm)); row < past; row++) {
        const v = originMm + (row + 0.5) * pitchMm
        let from = Infinity
        let to = -Infinity
        const pGap = radius2 - (v - pv) * (v - pv)
        if (pGap > 0) {
          const half = Math.sqrt(pGap)
          from = pu - half
          to = pu + half
        }
        const qGap = radius2 - (v - qv) * (v - qv)
        if (qGap > 0) {
          const half = Math.sqrt(qGap)
          if (qu - half < from) from = qu - half
          if (qu + half > to) to = qu + half
        }
        const plusV = v - offV
        if (plusV >= low && plusV <= high) {
          const u = pu + (plusV - pv) * slope + offU
          if (u > to) to = u
          if (u < from) from = u
        }
        const minusV = v + offV
        if (minusV >= low && minusV <= high) {
          const u = pu + (minusV - pv) * slope - offU
          if (u < from) from = u
          if (u > to) to = u
        }
        const slot = 2 * next[row]!++
        stretches[slot] = from
        stretches[slot + 1] = to
      }
    }
  }
  return mergeStretches(stretches, next, rows)
}

/** `next[row]` is where the row's stretches end. Merged in place. */
function mergeStretches(stretches: Float64Array, next: Int32Array, rows: number): RowSet {
  const rowStart = new Int32Array(rows + 1)
  let written = 0
  let begin = 0
  for (let row = 0; row < rows; row++) {
    const end = next[row]!
    sortStretches(stretches, begin, end)
    const rowBegin = written
    for (let i = begin; i < end; i++) {
      const from = stretches[2 * i]!
      const to = stretches[2 * i + 1]!
      if (to - from < LEAST_SPAN_MM) continue
      if (written > rowBegin && from <= stretches[written - 1]!) {
        if (to > stretches[written - 1]!) stretches[written - 1] = to
      } else {
        stretches[written++] = from
        stretches[written++] = to
      }
    }
    rowStart[row + 1] = written / 2
    begin = end
  }
  return { start: rowStart, spans: stretches.slice(0, written) }
}

/** Insertion sort by where they begin: rows hold a few, mostly in order already. */
function sortStretches(stretches: Float64Array, begin: number, end: number): void {
  for (let i = begin + 1; i < end; i++) {
    const from = stretches[2 * i]!
    const to = stretches[2 * i + 1]!
    let j = i - 1
    while (j >= begin && stretches[2 * j]! > from) {
      stretches[2 * j + 2] = stretches[2 * j]!
      stretches[2 * j + 3] = stretches[2 * j + 1]!
      j--
    }
    stretches[2 * j + 2] = from
    stretches[2 * j + 3] = to
  }
}
