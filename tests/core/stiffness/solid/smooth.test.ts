import { describe, expect, test } from 'vitest'
import { largestEigenvalue } from '../../../../src/core/stiffness/solid/largestEigenvalue.ts'
import { createSmoother, type Operator } from '../../../../src/core/stiffness/solid/smooth.ts'

/** So many eigenvalues from next to 0 up to 1. */
const COUNT = 4000
const EIGENVALUES = Float64Array.from({ length: COUNT }, (_, i) => (i + 1) / COUNT)

/** A matrix that is its own diagonal times nothing but its eigenvalues. */
const stretch: Operator = (moves, forces) => {
  for (let i = 0; i < COUNT; i++) forces[i] = EIGENVALUES[i]! * moves[i]!
}
const ONES = new Float64Array(COUNT).fill(1)

/** Of eigenvalues as shares of what the smoother takes for the largest. */
function leftBySmoothing() {
  const most = 1.1 * largestEigenvalue(stretch, ONES)
  const moves = ONES.slice()
  createSmoother(stretch, ONES).run(new Float64Array(COUNT), moves, false)
  return { shares: EIGENVALUES.map((value) => value / most), left: moves }
}

/** What is left of an error, 1 − aλ + bλ², where it is worst for a cycle through the levels. */
function worst(a: number, b: number): number {
  // Towards 0 it comes to this.
  let most = 1 / (2 * a)
  for (let i = 1; i <= COUNT; i++) {
    const at = i / COUNT
    const p = 1 - a * at + b * at * at
    if (p * p >= 1) return Infinity
    most = Math.max(most, (at * p * p) / (1 - p * p))
  }
  return most
}

describe('the smoother', () => {
  const { shares, left } = leftBySmoothing()
  // Two of its values tell the two numbers of 1 − aλ + bλ².
  const [x, y] = [shares[COUNT / 4]!, shares[COUNT - 1]!]
  const [p, q] = [left[COUNT / 4]!, left[COUNT - 1]!]
  const b = ((p - 1) / x - (q - 1) / y) / (x - y)
  const a = b * x - (p - 1) / x

  test('leaves 1 − aλ + bλ² of an error, a and b being 5/2 + √5 and 5/4·(1 + √5)', () => {
    for (let i = 0; i < COUNT; i++) {
      expect(left[i]).toBeCloseTo(1 - a * shares[i]! + b * shares[i]! ** 2, 9)
    }
    expect(a).toBeCloseTo(2.5 + Math.sqrt(5), 9)
    expect(b).toBeCloseTo(1.25 * (1 + Math.sqrt(5)), 9)
  })

  test('no other two steps are better in the worst case, by a slow search over all', () => {
    const own = worst(a, b)
    expect(own).toBeCloseTo(1 / (5 + 2 * Math.sqrt(5)), 6)
    // Both weights 1: 3 / (4·k·(k + 1)) of k = 2 steps.
    expect(worst(4, 3.2)).toBeCloseTo(1 / 8, 9)
    let best = Infinity
    for (let i = 0; i <= 160; i++) {
      for (let j = 0; j <= 160; j++) best = Math.min(best, worst(2 + 0.05 * i, 0.05 * j))
    }
    expect(best).toBeGreaterThan(own - 1e-9)
    // As near as the search looks, so it looks where these are.
    expect(best).toBeLessThan(1.02 * own)
  })
})
