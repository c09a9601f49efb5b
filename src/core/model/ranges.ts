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

export function shiftRange(range: Range, by: number): Range {
  return { low: range.low + by, mid: range.mid + by, high: range.high + by }
}

/** The sum of two that have no error in common: reaches add in quadrature, each side for itself. */
export function addApart(a: Range, b: Range): Range {
  const mid = a.mid + b.mid
  return {
    low: mid - Math.hypot(a.mid - a.low, b.mid - b.low),
    mid,
    high: mid + Math.hypot(a.high - a.mid, b.high - b.mid),
  }
}
