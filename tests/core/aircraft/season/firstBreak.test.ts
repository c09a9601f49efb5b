import { describe, expect, it } from 'vitest'
import { firstBreakShares } from '../../../../src/core/aircraft/season/firstBreak.ts'

const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0)

/** Every outcome of one crash, added up: a slow, obvious oracle. */
function counted(chances: readonly number[]): readonly number[] {
  const shares = chances.map(() => 0)
  let damaging = 0
  for (let outcome = 1; outcome < 2 ** chances.length; outcome++) {
    const broken = chances.map((_, i) => (outcome & (1 << i)) !== 0)
    const odds = chances.reduce((all, chance, i) => all * (broken[i] ? chance : 1 - chance), 1)
    const count = broken.filter(Boolean).length
    damaging += odds
    broken.forEach((is, i) => {
      if (is) shares[i] = (shares[i] ?? 0) + odds / count
    })
  }
  return shares.map((share) => share / damaging)
}

describe('what breaks first', () => {
  it.each([[[0.4, 0.15]], [[1, 1, 1]], [[0.9, 0.5, 0.2, 0.05, 0]], [[1, 0.3]], [[0.01]]])(
    'of %j meets every outcome counted, and sums to 1',
    (chances) => {
      const shares = firstBreakShares(chances)
      counted(chances).forEach((share, i) => {
        expect(shares[i]).toBeCloseTo(share, 12)
      })
      expect(sum(shares)).toBeCloseTo(1, 12)
    },
  )

  it('of 40% and 15%: 0.37 / 0.49 and 0.12 / 0.49, by hand', () => {
    // Alone 0.4 · 0.85 = 0.34 and 0.15 · 0.6 = 0.09, both together 0.06, halved between them.
    const [arm, boom] = firstBreakShares([0.4, 0.15])
    expect(arm).toBeCloseTo(0.37 / 0.49, 12)
    expect(boom).toBeCloseTo(0.12 / 0.49, 12)
  })

  it('is nothing where nothing breaks', () => {
    expect(firstBreakShares([0, 0])).toEqual([0, 0])
    expect(firstBreakShares([])).toEqual([])
  })
})
