import type { Range } from './figures.ts'

export const ZERO_RANGE: Range = { low: 0, mid: 0, high: 0 }

/** A number known exactly, as a range. */
export function exactRange(value: number): Range {
  return { low: value, mid: value, high: value }
}

/** End to end: low to low, high to high, as for errors that move together. */
export function addRanges(a: Range, b: Range): Range {
  return { low: a.low + b.low, mid: a.mid + b.mid, high: a.high + b.high }
}

/** By a factor of zero or more. */
export function scaleRange(range: Range, factor: number): Range {
  return { low: range.low * factor, mid: range.mid * factor, high: range.high * factor }
}
