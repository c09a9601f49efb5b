import type { Range } from '../model/figures.ts'

/** Relative error of a figure below and above its middle value, as shares ≥ 0. */
export interface Spread {
  readonly low: number
  readonly high: number
}

/** Errors that have nothing to do with each other: added in quadrature, each side for itself. */
export function combineSpreads(spreads: readonly Spread[]): Spread {
  return {
    low: Math.hypot(...spreads.map((spread) => spread.low)),
    high: Math.hypot(...spreads.map((spread) => spread.high)),
  }
}

/** A range about `mid`; never below zero. */
export function rangeAbout(mid: number, spread: Spread): Range {
  return { low: Math.max(0, mid * (1 - spread.low)), mid, high: mid * (1 + spread.high) }
}
