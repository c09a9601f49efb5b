import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  chanceBelow,
  fitSplitNormal,
  quantile,
  splitMoments,
} from '../../../src/core/frame/splitNormal.ts'
import type { SplitNormal } from '../../../src/core/frame/splitNormal.ts'

const bell = fc.record({
  mode: fc.double({ min: -100, max: 100, noNaN: true }),
  sigmaLow: fc.double({ min: 0, max: 10, noNaN: true }),
  sigmaHigh: fc.double({ min: 0.01, max: 10, noNaN: true }),
})

/** The density of John 1982, summed by the midpoint rule. */
function integrate(split: SplitNormal, what: (x: number) => number): number {
  const { mode, sigmaLow, sigmaHigh } = split
  const height = Math.sqrt(2 / Math.PI) / (sigmaLow + sigmaHigh)
  const from = mode - 9 * sigmaLow
  const to = mode + 9 * sigmaHigh
  const steps = 20_000
  const dx = (to - from) / steps
  let sum = 0
  for (let i = 0; i < steps; i++) {
    const x = from + (i + 0.5) * dx
    const z = (x - mode) / (x < mode ? sigmaLow : sigmaHigh)
    sum += what(x) * height * Math.exp(-(z * z) / 2) * dx
  }
  return sum
}

describe('split normal', () => {
  it('has the moments its density has', () => {
    const split = { mode: 3, sigmaLow: 0.4, sigmaHigh: 1.7 }
    const { mean, variance, third } = splitMoments(split)
    expect(integrate(split, () => 1)).toBeCloseTo(1, 6)
    expect(mean).toBeCloseTo(
      integrate(split, (x) => x),
      5,
    )
    expect(variance).toBeCloseTo(
      integrate(split, (x) => (x - mean) ** 2),
      5,
    )
    expect(third).toBeCloseTo(
      integrate(split, (x) => (x - mean) ** 3),
      5,
    )
  })

  it('is the half-normal when one side is empty: mean √(2/π), skewness 0.9953', () => {
    const { mean, variance, third } = splitMoments({ mode: 0, sigmaLow: 0, sigmaHigh: 1 })
    expect(mean).toBeCloseTo(0.797_885, 6)
    expect(variance).toBeCloseTo(0.363_38, 5)
    expect(third / variance ** 1.5).toBeCloseTo(0.995_27, 5)
  })

  it('is the normal when both sides agree: 15.87 % below one sigma under', () => {
    const split = { mode: 10, sigmaLow: 2, sigmaHigh: 2 }
    expect(chanceBelow(split, 8)).toBeCloseTo(0.158_655, 6)
    expect(chanceBelow(split, 10)).toBeCloseTo(0.5, 6)
    expect(chanceBelow(split, 10 + 1.959_964 * 2)).toBeCloseTo(0.975, 6)
  })

  it('is found again from its own moments', () => {
    fc.assert(
      fc.property(bell, (split) => {
        const found = fitSplitNormal(splitMoments(split))
        const size = split.sigmaLow + split.sigmaHigh
        expect(Math.abs(found.mode - split.mode)).toBeLessThan(1e-4 * size + 1e-9)
        expect(Math.abs(found.sigmaLow - split.sigmaLow)).toBeLessThan(1e-4 * size)
        expect(Math.abs(found.sigmaHigh - split.sigmaHigh)).toBeLessThan(1e-4 * size)
      }),
      { seed: 1982, numRuns: 300 },
    )
  })

  it('has quantiles that undo its chances', () => {
    fc.assert(
      fc.property(bell, fc.double({ min: 0.01, max: 0.99, noNaN: true }), (split, chance) => {
        expect(chanceBelow(split, quantile(split, chance))).toBeCloseTo(chance, 5)
      }),
      { seed: 7126, numRuns: 300 },
    )
  })

  it('is a strict step without spread', () => {
    const split = { mode: 250, sigmaLow: 0, sigmaHigh: 0 }
    expect(chanceBelow(split, 250)).toBe(0)
    expect(chanceBelow(split, 250.01)).toBe(1)
  })
})
