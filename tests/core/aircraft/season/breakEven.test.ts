import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { cheaperFrom, spentAfter } from '../../../../src/core/aircraft/season/breakEven.ts'

describe('money after broken arms', () => {
  const printed = { first: 16, perBreak: 1 }
  const carbon = { first: 35, perBreak: 10 }

  it('adds up', () => {
    expect(spentAfter(printed, 3)).toBe(19)
    expect(spentAfter(carbon, 3)).toBe(65)
  })

  it('never favours carbon that is dearer at first and for each arm', () => {
    expect(cheaperFrom(carbon, printed)).toBeNull()
    expect(cheaperFrom(printed, carbon)).toBe(0)
  })

  it('finds the crash at which dear but tough carbon would have been cheaper', () => {
    // 16 + 4 k against 36 + k / 2: even at 5.71, so from the sixth.
    expect(cheaperFrom({ first: 36, perBreak: 0.5 }, { first: 16, perBreak: 4 })).toBe(6)
    // Even exactly at 5: cheaper only from 6 on.
    expect(cheaperFrom({ first: 36, perBreak: 0 }, { first: 16, perBreak: 4 })).toBe(6)
  })

  it('is the least whole number at which less was spent', () => {
    const costs = fc.record({
      first: fc.integer({ min: 0, max: 200 }),
      perBreak: fc.integer({ min: 0, max: 20 }),
    })
    fc.assert(
      fc.property(costs, costs, (one, other) => {
        const tried = Array.from({ length: 300 }, (_, k) => k).find(
          (k) => spentAfter(one, k) < spentAfter(other, k),
        )
        expect(cheaperFrom(one, other)).toBe(tried ?? null)
      }),
      { seed: 3 },
    )
  })
})
