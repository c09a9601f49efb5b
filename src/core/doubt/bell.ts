import type { Range } from '../model/figures.ts'
import type { Bell } from './belief.ts'

/**
 * A range holds 95 % of cases: two deviations to each side (coverage factor 2, JCGM 100:2008,
 * 6.3.3).
 */
export const COVERAGE = 2

/** The range of a quantity that cannot be negative. */
export function rangeOf({ mean, sigma, least = 0 }: Bell): Range {
  const mid = Math.max(0, mean)
  return {
    low: Math.max(0, least, mean - COVERAGE * sigma),
    mid,
    high: Math.max(0, mean + COVERAGE * sigma),
  }
}

/** Chance of a value below `x`; a step where there is no doubt. */
export function chanceBelow({ mean, sigma }: Bell, x: number): number {
  if (!(sigma > 0)) return mean < x ? 1 : 0
  return normalBelow((x - mean) / sigma)
}

/**
 * Standard normal distribution, to 1.5e-7 (Abramowitz and Stegun, Handbook of Mathematical
 * Functions, 7.1.26).
 */
function normalBelow(z: number): number {
  const x = Math.abs(z) / Math.SQRT2
  const t = 1 / (1 + 0.327_591_1 * x)
  const poly =
    t *
    (0.254_829_592 +
      t * (-0.284_496_736 + t * (1.421_413_741 + t * (-1.453_152_027 + t * 1.061_405_429))))
  const tail = (poly * Math.exp(-x * x)) / 2
  return z < 0 ? tail : 1 - tail
}
