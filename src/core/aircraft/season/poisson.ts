/*
 * Counts of rare, independent events with a given mean (Poisson; any statistics text, e.g. NIST/SEMATECH e-Handbook of
 * Statistical Methods, 1.3.6.6.19).
 */

/** Chance of at most `most` events, 0–1. */
export function poissonAtMost(most: number, mean: number): number {
  let sum = 0
  for (let n = 0, log = -mean; n <= most; n++, log += logStep(mean, n)) sum += Math.exp(log)
  return Math.min(1, sum)
}

/** Events to expect beyond the first `covered`: Σ (n − covered) over n > covered. */
export function poissonBeyond(covered: number, mean: number): number {
  let unused = 0
  for (let n = 0, log = -mean; n < covered; n++, log += logStep(mean, n)) {
    unused += (covered - n) * Math.exp(log)
  }
  return Math.max(0, mean - covered + unused)
}

/** Least number of spares with which the chance of running out stays below `risk` (above 0). */
export function sparesFor(mean: number, risk = 0.05): number {
  if (!(mean > 0)) return 0
  let sum = 0
  for (let covered = 0, log = -mean; ; covered++, log += logStep(mean, covered)) {
    sum += Math.exp(log)
    // Past the mean a chance of zero ends the series, whatever rounding left of the sum.
    if (1 - sum < risk || (covered > mean && Math.exp(log) === 0)) return covered
  }
}

/**
 * From the logarithm of one chance to the next: terms are kept as logarithms, since e^−mean is zero
 * from 746 on.
 */
function logStep(mean: number, next: number): number {
  return mean > 0 ? Math.log(mean / next) : -Infinity
}
