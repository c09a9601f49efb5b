import * as fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { againstLimit, keepsLimit } from '../../../src/core/choose/gives/againstLimit.ts'

const range = (low: number, mid: number, high: number) => ({ low, mid, high })

describe('a figure held against its limit', () => {
  test.each([
    ['deflectionMm', 2, range(1.2, 1.6, 2), 0, true],
    ['deflectionMm', 2, range(1.5, 2, 2.7), 0, false],
    ['deflectionMm', 2, range(1.6, 2.1, 2.8), 0.05, false],
    ['firstHz', 80, range(81, 90, 99), 0, true],
    ['firstHz', 80, range(72, 80, 88), 0, false],
    ['firstHz', 80, range(63, 72, 81), 0.1, false],
  ] as const)('%s asked %s, found %o: short by %s', (limit, asked, found, shortBy, isSure) => {
    const told = againstLimit(limit, asked, found)
    expect(told.shortBy).toBeCloseTo(shortBy, 9)
    expect(told.isSure).toBe(isSure)
  })

  test('what is sure is kept, and what is kept is not short', () => {
    const size = fc.double({ min: 0.01, max: 1000, noNaN: true })
    fc.assert(
      fc.property(
        fc.constantFrom('deflectionMm', 'firstHz'),
        size,
        size,
        fc.double({ min: 0, max: 0.5, noNaN: true }),
        (limit, asked, mid, doubt) => {
          const { shortBy, isSure } = againstLimit(
            limit,
            asked,
            range(mid * (1 - doubt), mid, mid * (1 + doubt)),
          )
          expect(shortBy === 0).toBe(keepsLimit(limit, asked, mid))
          if (isSure) expect(shortBy).toBe(0)
        },
      ),
    )
  })
})
