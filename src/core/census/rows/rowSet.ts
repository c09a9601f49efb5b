import type { Borrowed } from '../../model/borrowed.ts'

/**
 * A flat region as the stretches that parallel scan rows have inside it. Row k of n lies at (k +
 * ½)·pitch from the grid's first edge. Stretch j of row k is `spans[2j] … spans[2j + 1]` (from, to;
 * mm) for `start[k] ≤ j < start[k + 1]`, sorted, never touching.
 */
export interface RowSet {
  readonly start: Int32Array
  readonly spans: Float64Array
}

/** A region in memory that is used again. */
export interface BorrowedRows {
  readonly start: Borrowed<Int32Array>
  readonly spans: Borrowed<Float64Array>
}

/** Stretches shorter than this are rounding. mm */
export const LEAST_SPAN_MM = 1e-7

export function emptyRows(rows: number): RowSet {
  return { start: new Int32Array(rows + 1), spans: new Float64Array(0) }
}

export const isEmpty = (region: BorrowedRows): boolean => region.spans.length === 0

/** The region in memory of its own. */
export function copyRows({ start, spans }: BorrowedRows): RowSet {
  return { start: start.slice(), spans: spans.slice() }
}

/** Area = summed length × pitch. */
export function rowLengthMm(region: BorrowedRows): number {
  const { spans } = region
  let sum = 0
  for (let i = 0; i < spans.length; i += 2) sum += spans[i + 1]! - spans[i]!
  return sum
}
