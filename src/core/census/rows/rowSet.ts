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
export const LEAST_SPAN_MM = 1e-7

export function emptyRows(rows: number): RowSet {
  return { start: new Int32Array(rows + 1), spans: new Float64Array(0) }
}

export const isEmpty = (region: RowSet): boolean => region.spans.length === 0

/** Area = summed length × pitch. */
export function rowLengthMm(region: RowSet): number {
  const { spans } = region
  let sum = 0
  for (let i = 0; i < spans.length; i += 2) sum += spans[i + 1]! - spans[i]!
  return sum
}
