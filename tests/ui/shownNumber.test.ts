import { afterEach, describe, expect, test } from 'vitest'
import { keptOf, METRIC, shownAs, shownOf, showUnits } from '../../src/core/words/shownUnits.ts'
import { readNumber } from '../../src/ui/fields/readNumber.ts'
import { FINEST, shownNumber } from '../../src/ui/fields/shownNumber.ts'
import { LIMIT_ROWS } from '../support/limitRows.ts'

const LOCALES = ['en-GB', 'en-US', 'de-DE', 'de-CH', 'fr-FR', 'sv-SE', 'pl-PL'] as const

/** As a hand types them; those that a row takes. */
const TYPED = [0, 0.02, 0.25, 0.333, 1, 2, 3.125, 12.05, 36, 212.5, 1000.5, -0.25, -90.5]
/** Decimals that boxes show of what is worked out. */
const DIGITS = [0, 1, 2, 3]

afterEach(() => {
  showUnits(METRIC)
})

describe.each(LOCALES)('a number box of %s', (locale) => {
  test.each(LIMIT_ROWS)('gives back what %s takes, whichever mark is typed', (_, limits) => {
    const { min, max, whole } = limits
    const fitting = [min, max, ...TYPED].filter(
      (value) => value >= min && value <= max && (!whole || Number.isInteger(value)),
    )
    for (const value of fitting) {
      for (const mark of ['.', ',']) {
        const kept = valueOf(readNumber(String(value).replace('.', mark), limits))
        expect(kept).toBe(value)
        for (const digits of DIGITS) {
          const shown = shownNumber(kept, digits, FINEST, locale)
          expect(valueOf(readNumber(shown, limits))).toBe(value)
        }
      }
    }
  })

  test.each(['mm', 'cm²', 'dm²', 'g', 'kg', 'g/dm²'])('gives back %s in other units', (unit) => {
    showUnits({ length: 'in', mass: 'oz' })
    const as = shownAs(unit)
    for (const value of TYPED) {
      const shown = shownNumber(shownOf(keptOf(value, as), as), 3, 3, locale)
      expect(readNumber(shown, { whole: false })).toEqual({ value })
    }
  })

  test('gives back per cent that are kept as a share', () => {
    for (let tenths = 0; tenths <= 1000; tenths++) {
      const shown = shownNumber((tenths / 10 / 100) * 100, 0, FINEST, locale)
      expect(readNumber(shown, { whole: false })).toEqual({ value: tenths / 10 })
    }
  })
})

test('of what was worked out only so many decimals are shown', () => {
  expect(shownNumber(Math.PI, 2, FINEST, 'en')).toBe('3.14')
  expect(shownNumber(100 / 3, 0, FINEST, 'en')).toBe('33')
  expect(shownNumber(110 / 25.4, 3, 3, 'en')).toBe('4.331')
  // 1 in² is 0.064516 dm² exactly: six a square decimetre are no more typed for it.
  expect(shownNumber(6 * 0.064516, 4, 4, 'en')).toBe('0.3871')
  // Dust of floating point is no decimal.
  expect(shownNumber(0.07 * 100, 1, FINEST, 'en')).toBe('7')
  expect(shownNumber(100 * Math.cos(Math.PI / 3), 1, FINEST, 'en')).toBe('50')
})

function valueOf(read: ReturnType<typeof readNumber>): number {
  if ('refused' in read) throw new Error(read.refused)
  return read.value
}
