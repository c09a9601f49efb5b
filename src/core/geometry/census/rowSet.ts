/**
 * A flat region as the stretches that parallel scan rows have inside it.
 * Row k of n lies at (k + ½)·pitch from the grid's first edge. Stretch j of row k is
 * `spans[2j] … spans[2j + 1]` (from, to; mm along the row) for `start[k] ≤ j < start[k + 1]`, sorted, never touching.
 */
export interface RowSet {
  readonly start: Int32Array
  readonly spans: Float64Array
}

/** Stretches shorter than this are rounding. mm */
const LEAST_SPAN_MM = 1e-7

/** Appends stretches row by row into growing buffers, joining those that touch. */
export interface RowWriter {
  add(from: number, to: number): void
  endRow(): void
  finish(): RowSet
}

export function createRowWriter(rows: number, expectedSpans: number): RowWriter {
  const start = new Int32Array(rows + 1)
  let spans = new Float64Array(2 * Math.max(16, expectedSpans))
  let written = 0
  let row = 0
  let rowBegin = 0
  return {
    add(from, to) {
      if (to - from < LEAST_SPAN_MM) return
      if (written > rowBegin && from <= spans[written - 1]!) {
        if (to > spans[written - 1]!) spans[written - 1] = to
        return
      }
      if (written === spans.length) {
        const larger = new Float64Array(spans.length * 2)
        larger.set(spans)
        spans = larger
      }
      spans[written++] = from
      spans[written++] = to
    },
    endRow() {
      start[++row] = written / 2
      rowBegin = written
    },
    finish: () => ({ start, spans: spans.slice(0, written) }),
  }
}

export function emptyRows(rows: number): RowSet {
  return { start: new Int32Array(rows + 1), spans: new Float64Array(0) }
}

export const isEmpty = (region: RowSet): boolean => region.spans.length === 0

/** Area = summed length × pitch. */
export function rowLengthMm(region: RowSet): number {
  let sum = 0
  for (let i = 0; i < region.spans.length; i += 2) sum += region.spans[i + 1]! - region.spans[i]!
  return sum
}
