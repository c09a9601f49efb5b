import { describe, expect, it } from 'vitest'
import {
  poissonAtMost,
  poissonBeyond,
  sparesFor,
} from '../../../../src/core/aircraft/season/poisson.ts'

describe('Poisson chances', () => {
  it('of a mean of 1 are 1/e, 2/e, 2.5/e, 8/3/e for at most 0, 1, 2, 3', () => {
    expect(poissonAtMost(0, 1)).toBeCloseTo(1 / Math.E, 14)
    expect(poissonAtMost(1, 1)).toBeCloseTo(2 / Math.E, 14)
    expect(poissonAtMost(2, 1)).toBeCloseTo(2.5 / Math.E, 14)
    expect(poissonAtMost(3, 1)).toBeCloseTo(8 / 3 / Math.E, 14)
  })

  /*
   * P(N ≤ s) at mean m is the chance that chi-square with 2(s + 1) degrees of freedom passes 2m, so
   * the lower 5 % points of chi-square (NIST/SEMATECH e-Handbook, table 1.3.6.7.4) mark where one
   * more spare is needed.
   */
  it.each([
    [0, 0.103],
    [1, 0.711],
    [2, 1.635],
    [3, 2.733],
    [4, 3.94],
    [5, 5.226],
    [9, 10.851],
  ])('keep %i spares enough until twice the mean reaches chi-square’s %f', (spares, chiSquare) => {
    expect(sparesFor((chiSquare - 0.001) / 2)).toBe(spares)
    expect(sparesFor((chiSquare + 0.001) / 2)).toBe(spares + 1)
  })

  it('cover what a sum over all outcomes says of the breaks beyond the spares', () => {
    for (const [covered, mean] of [
      [0, 2.5],
      [2, 0.4],
      [3, 3],
      [10, 4],
    ] as const) {
      let sum = 0
      let chance = Math.exp(-mean)
      for (let n = 1; n < 80; n++) {
        chance *= mean / n
        sum += Math.max(0, n - covered) * chance
      }
      expect(poissonBeyond(covered, mean)).toBeCloseTo(sum, 12)
    }
    expect(poissonBeyond(0, 2.5)).toBe(2.5)
  })

  it('hold for means whose e^−mean is zero in double precision', () => {
    expect(poissonAtMost(1000, 1000)).toBeCloseTo(0.5084, 3)
    // Normal approximation with continuity: 1000 + 1.645 √1000 − 0.5.
    expect(Math.abs(sparesFor(1000) - 1052)).toBeLessThan(2)
    expect(poissonBeyond(900, 1000)).toBeCloseTo(100, 1)
  })

  it('need nothing when nothing breaks', () => {
    expect(sparesFor(0)).toBe(0)
    expect(sparesFor(Number.NaN)).toBe(0)
    expect(poissonAtMost(0, 0)).toBe(1)
    expect(poissonBeyond(0, 0)).toBe(0)
    expect(sparesFor(3, 1e-300)).toBeGreaterThan(100)
  })
})
