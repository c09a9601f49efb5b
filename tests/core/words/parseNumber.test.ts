import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { parseNumber } from '../../../src/core/words/parseNumber.ts'

const LOCALES = ['en-GB', 'en-US', 'de-DE', 'de-CH', 'fr-FR', 'sv-SE', 'pl-PL']

// prettier-ignore
const MARKS = [
  '0', '1', '2', '3', '4', '5', '6', '7', '8', '9',
  '.', ',', "'", ' ', '-', '+', 'e', '’', '\u00a0',
]

/** Numbers of at most six decimals. */
const NUMBERS = fc
  .tuple(fc.integer({ min: -1e9, max: 1e9 }), fc.integer({ min: 0, max: 6 }))
  .map(([digits, decimals]) => Number((digits / 10 ** decimals).toFixed(decimals)) || 0)

describe('a typed number', () => {
  test.each(LOCALES)('comes back from how %s writes it (seed 9)', (locale) => {
    fc.assert(
      fc.property(NUMBERS, (value) => {
        const text = value.toLocaleString(locale, { maximumFractionDigits: 6, useGrouping: false })
        expect(parseNumber(text)).toBe(value)
      }),
      { seed: 9, numRuns: 500 },
    )
  })

  test.each(LOCALES)(
    'comes back from how %s groups it, where nothing else can be meant',
    (locale) => {
      fc.assert(
        fc.property(NUMBERS, (value) => {
          // Two decimals at least, so that a lone mark is never that of a group.
          const text = value.toLocaleString(locale, {
            minimumFractionDigits: 2,
            maximumFractionDigits: 6,
          })
          expect(parseNumber(text)).toBe(value)
        }),
        { seed: 9, numRuns: 500 },
      )
    },
  )

  test.each([
    ['0.2', 0.2],
    ['0,2', 0.2],
    ['.2', 0.2],
    [',2', 0.2],
    ['2,', 2],
    [' 12 ', 12],
    ['-0', 0],
    ['+3,5', 3.5],
    ['−3,5', -3.5],
    // One mark is the decimal mark, in every language.
    ['1.000', 1],
    ['1,250', 1.25],
    ['1.000,5', 1000.5],
    ['1,000.5', 1000.5],
    ['1.000.000', 1_000_000],
    ['1,234,567', 1_234_567],
    ['1.234.567,25', 1_234_567.25],
    ['1 000,5', 1000.5],
    ['1\u202f000,5', 1000.5],
    ['1\u00a0000', 1000],
    ["1'000.5", 1000.5],
    ['12’345.6', 12_345.6],
  ])('“%s” is %d', (text, value) => {
    expect(parseNumber(text)).toBe(value)
  })

  test.each([
    '',
    ' ',
    '-',
    '.',
    ',',
    '1,2,3',
    '1.2.3',
    '1,000.000,5',
    '1 00',
    '1 0000',
    '10 00,5',
    '1.00,5',
    '0.000,5',
    '1 000.000,5',
    '12 mm',
    '1e3',
    '0x10',
    '3/4',
    '--1',
    '1-',
    '∞',
    'NaN',
    'abc',
    '1a',
    '²',
    '1..5',
    "1'00",
    "1 000'000",
  ])('“%s” is refused whole', (text) => {
    expect(parseNumber(text)).toBeNull()
  })

  test('is never more than what was typed: whatever is taken is a number (seed 9)', () => {
    const marks = fc.constantFrom(...MARKS)
    fc.assert(
      fc.property(fc.string({ unit: marks, maxLength: 7 }), (text) => {
        const value = parseNumber(text)
        if (value === null) return
        expect(Number.isNaN(value)).toBe(false)
        // Every digit typed stands in the number, in its order.
        const typed = text.replaceAll(/\D/g, '').replace(/^0+/, '').replace(/0+$/, '')
        const kept = value.toFixed(8).replaceAll(/\D/g, '').replace(/^0+/, '').replace(/0+$/, '')
        expect(kept).toBe(typed)
      }),
      { seed: 9, numRuns: 5000 },
    )
  })
})
