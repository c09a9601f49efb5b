import type { BorrowedRows } from './rowSet.ts'
import { LEAST_SPAN_MM } from './rowSet.ts'
import type { ScanGrid } from './scanGrid.ts'
import { rowAbove } from './scanGrid.ts'
import { createScratch } from './scratch.ts'
import { sortPairs } from './sortPairs.ts'

/**
 * Gathers convex shapes, each by the one stretch it has on every row it meets, and merges them to a
 * region.
 */
export interface StretchList {
  clear(): void
  /**
   * u, v of the four corners in order. In an array: numbers handed over one by one would each take
   * memory.
   */
  addQuad(corners: Float64Array, grid: ScanGrid): void
  addDisc(u: number, v: number, radiusMm: number, grid: ScanGrid): void
  /** A region's stretches, `away` rows further up and longer by `widerMm` at both ends. */
  addWider(region: BorrowedRows, away: number, widerMm: number, rows: number): void
  /** Until the list is used again. */
  toRows(rows: number): BorrowedRows
}

export function createStretchList(): StretchList {
  const nextSpace = createScratch()
  const startSpace = createScratch()
  const rowAt = new Int32Array(4)
  let rowOf = new Int32Array(4096)
  let ends = new Float64Array(8192)
  let sorted = new Float64Array(8192)
  let count = 0
  const makeRoom = (more: number): void => {
    if (count + more <= rowOf.length) return
    const larger = new Int32Array(2 * (count + more))
    larger.set(rowOf)
    rowOf = larger
    const longer = new Float64Array(4 * (count + more))
    longer.set(ends)
    ends = longer
  }
  return {
    clear() {
      count = 0
    },
    addQuad(corners, { rows, originMm, pitchMm }) {
      let first = rows
      let past = 0
      for (let k = 0; k < 4; k++) {
        const row = rowAbove(corners[2 * k + 1]!, originMm, pitchMm)
        rowAt[k] = row
        if (row < first) first = row
        if (row > past) past = row
      }
      if (first < 0) first = 0
      if (past > rows) past = rows
      if (first >= past) return
      makeRoom(past - first)
      const begin = count
      for (let row = first; row < past; row++, count++) {
        rowOf[count] = row
        ends[2 * count] = Infinity
        ends[2 * count + 1] = -Infinity
      }
      for (let k = 0; k < 4; k++) {
        const next = (k + 1) & 3
        const a = rowAt[k]!
        const b = rowAt[next]!
        if (a === b) continue
        const u = corners[2 * k]!
        const v = corners[2 * k + 1]!
        const slope = (corners[2 * next]! - u) / (corners[2 * next + 1]! - v)
        const base = u + (originMm + 0.5 * pitchMm - v) * slope
        const step = pitchMm * slope
        const low = Math.max(first, Math.min(a, b))
        const high = Math.min(past, Math.max(a, b))
        let slot = 2 * (begin + low - first)
        for (let row = low; row < high; row++, slot += 2) {
          const at = base + row * step
          if (at < ends[slot]!) ends[slot] = at
          if (at > ends[slot + 1]!) ends[slot + 1] = at
        }
      }
    },
    addDisc(u, v, radiusMm, { rows, originMm, pitchMm }) {
      const first = Math.max(0, rowAbove(v - radiusMm, originMm, pitchMm))
      const past = Math.min(rows, rowAbove(v + radiusMm, originMm, pitchMm))
      makeRoom(Math.max(0, past - first))
      for (let row = first; row < past; row++, count++) {
        const away = originMm + (row + 0.5) * pitchMm - v
        const half = Math.sqrt(Math.max(0, radiusMm * radiusMm - away * away))
        rowOf[count] = row
        ends[2 * count] = u - half
        ends[2 * count + 1] = u + half
      }
    },
    addWider({ start, spans }, away, widerMm, rows) {
      const first = Math.max(0, -away)
      const past = Math.min(rows, rows - away)
      if (first >= past) return
      makeRoom(start[past]! - start[first]!)
      for (let row = first; row < past; row++) {
        for (let i = start[row]!; i < start[row + 1]!; i++, count++) {
          rowOf[count] = row + away
          ends[2 * count] = spans[2 * i]! - widerMm
          ends[2 * count + 1] = spans[2 * i + 1]! + widerMm
        }
      }
    },
    toRows(rows) {
      const next = nextSpace.ints(rows + 1)
      next.fill(0, 0, rows + 1)
      for (let i = 0; i < count; i++) next[rowOf[i]! + 1]!++
      for (let row = 0; row < rows; row++) next[row + 1]! += next[row]!
      if (sorted.length < 2 * count) sorted = new Float64Array(3 * count)
      for (let i = 0; i < count; i++) {
        const slot = 2 * next[rowOf[i]!]!++
        sorted[slot] = ends[2 * i]!
        sorted[slot + 1] = ends[2 * i + 1]!
      }
      return mergeStretches(sorted, next, startSpace.ints(rows + 1).subarray(0, rows + 1))
    },
  }
}

/** `next[row]` is where the row's stretches end. Merged in place; `rowStart` is filled. */
function mergeStretches(
  stretches: Float64Array,
  next: Int32Array,
  rowStart: Int32Array,
): BorrowedRows {
  const rows = rowStart.length - 1
  rowStart[0] = 0
  let written = 0
  let begin = 0
  for (let row = 0; row < rows; row++) {
    const end = next[row]!
    sortPairs(stretches, begin, end)
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
  return { start: rowStart, spans: stretches.subarray(0, written) }
}
