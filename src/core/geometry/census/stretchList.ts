import type { RowSet } from './rowSet.ts'
import { LEAST_SPAN_MM } from './rowSet.ts'
import { createScratch } from './scratch.ts'

/** Gathers convex shapes, each by the one stretch it has on every row, and merges them to a region. */
export interface StretchList {
  clear(): void
  /** Begins a shape that meets the rows from `first` to below `past`. */
  open(first: number, past: number): void
  /** Makes the shape's stretch on every row from `first` to below `past` hold `base` + row × `step`. */
  stretch(first: number, past: number, base: number, step: number): void
  /** Makes the shape's stretch on one row hold what lies between. */
  reach(row: number, from: number, to: number): void
  /** Good until the list is used again. */
  toRows(rows: number): RowSet
}

export function createStretchList(): StretchList {
  const nextSpace = createScratch()
  const startSpace = createScratch()
  let rowOf = new Int32Array(4096)
  let ends = new Float64Array(8192)
  let sorted = new Float64Array(8192)
  let count = 0
  /** Rows of the open shape, and where its first row's stretch is. */
  let first = 0
  let past = 0
  let begin = 0
  return {
    clear() {
      count = 0
    },
    open(from, to) {
      first = from
      past = to
      begin = count
      count += to - from
      if (count > rowOf.length) {
        const more = new Int32Array(2 * count)
        more.set(rowOf)
        rowOf = more
        const longer = new Float64Array(4 * count)
        longer.set(ends)
        ends = longer
      }
      for (let i = begin; i < count; i++) {
        rowOf[i] = from + i - begin
        ends[2 * i] = Infinity
        ends[2 * i + 1] = -Infinity
      }
    },
    stretch(from, to, base, step) {
      const low = from > first ? from : first
      const high = to < past ? to : past
      let slot = 2 * (begin + low - first)
      for (let row = low; row < high; row++, slot += 2) {
        const at = base + row * step
        if (at < ends[slot]!) ends[slot] = at
        if (at > ends[slot + 1]!) ends[slot + 1] = at
      }
    },
    reach(row, from, to) {
      const slot = 2 * (begin + row - first)
      ends[slot] = from
      ends[slot + 1] = to
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
function mergeStretches(stretches: Float64Array, next: Int32Array, rowStart: Int32Array): RowSet {
  const rows = rowStart.length - 1
  rowStart[0] = 0
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
  return { start: rowStart, spans: stretches.subarray(0, written) }
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
