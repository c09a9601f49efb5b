import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  formatAll,
  formatFilament,
  formatFixed,
  formatGrams,
  formatHours,
  formatMass,
  formatMoney,
  formatNumber,
  formatPercent,
  formatRange,
  formatVolume,
  formatWithUnit,
  withSign,
} from '../../../src/core/words/format.ts'

const EN = 'en-GB'
/** With plain spaces, so that the expected texts can be read. */
const plain = (text: string): string => text.replaceAll('\u00a0', ' ')

describe('figures that keep their digits', () => {
  it('are written out, up to the decimals asked for', () => {
    expect(formatAll(249.48, 2, 'en-GB')).toBe('249.48')
    expect(formatAll(24_948, 2, 'de-DE')).toBe('24.948')
    expect(formatAll(0.5, 6, 'fr-FR')).toBe('0,5')
  })

  it('or down a column with the same decimals, and no minus before zero', () => {
    expect(formatFixed(7, 1, 'en-GB')).toBe('7.0')
    expect(formatFixed(608.04, 1, 'de-DE')).toBe('608,0')
    expect(formatFixed(-0.04, 1, 'en-GB')).toBe('0.0')
  })
})

describe('rounding', () => {
  it('happens once: 1.747 to one decimal is 1.7, not 1.75 and then 1.8', () => {
    expect(formatNumber(1.747, 'en', 1)).toBe('1.7')
    expect(formatNumber(12.49, 'en', 0)).toBe('12')
    expect(formatPercent(0.017_47, 'en')).toBe('1.7\u00a0%')
    expect(formatPercent(0.1249, 'en')).toBe('12\u00a0%')
    expect(formatMoney(0.1249, 'EUR', 'en')).toBe('€0.12')
  })

  it('leaves no more than half of the last digit shown, whatever the number', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -99_999, max: 99_999, noNaN: true }),
        fc.constantFrom(0, 1, 2),
        (value, decimals) => {
          const shown = Number(
            formatNumber(value, 'en', decimals).replaceAll(',', '').replace('−', '-'),
          )
          const digits = Math.max(
            -decimals,
            Math.floor(Math.log10(Math.max(1e-9, Math.abs(shown)))) - 2,
          )
          expect(Math.abs(shown - value)).toBeLessThanOrEqual(0.5 * 10 ** digits * (1 + 1e-9))
        },
      ),
      { seed: 1747, numRuns: 500 },
    )
  })
})

describe('formatNumber', () => {
  it.each([
    [0, '0'],
    [-0, '0'],
    [1.23456, '1.23'],
    [12.3456, '12.3'],
    [123.456, '123'],
    [999.5, '1,000'],
    [1234.5, '1,230'],
    [0.004, '0'],
    [0.006, '0.01'],
    [-0.001, '0'],
    [-8.567, '-8.57'],
    [NaN, '–'],
    [Infinity, '–'],
    [-Infinity, '–'],
  ])('writes %s as %s', (value, text) => {
    expect(formatNumber(value, EN).replace('−', '-')).toBe(text)
  })

  it('writes the way the reader’s country does', () => {
    expect(formatNumber(1.25, 'de-DE')).toBe('1,25')
    expect(formatNumber(1234, 'de-DE')).toBe('1.230')
  })
})

describe('units', () => {
  it.each([
    [0, '0.00 g'],
    [0.0004, '<0.01 g'],
    [0.994, '0.99 g'],
    [0.996, '1.0 g'],
    [8.216, '8.2 g'],
    [999.94, '999.9 g'],
    [999.96, '1,000 g'],
    [1264.4, '1,264 g'],
    [24_338, '24,338 g'],
    [-56, '-56.0 g'],
    [NaN, '–'],
  ])('%s g reads %s', (massG, text) => {
    expect(plain(formatMass(massG, EN)).replace('−', '-')).toBe(text)
  })

  it('writes masses so that a column adds up to its sum, as far as its digits can', () => {
    const masses = [0.31, 9.94, 43.42, 128.46, 999.9, 1045.6]
    const read = (text: string): number => Number(text.replaceAll(',', ''))
    const column = masses.reduce((sum, massG) => sum + read(formatGrams(massG, EN)), 0)
    const sum = read(
      formatGrams(
        masses.reduce((all, massG) => all + massG, 0),
        EN,
      ),
    )
    // Four tenths, a hundredth and two whole grams, each rounded by half at most.
    expect(Math.abs(column - sum)).toBeLessThanOrEqual(4 * 0.05 + 0.005 + 2 * 0.5)
    expect(formatGrams(0.31, EN, 1)).toBe('0.3')
    expect(formatGrams(1045.6, 'de-DE', 1)).toBe('1.046')
  })

  it.each([
    [0, '0 cm'],
    [0.5, '50 cm'],
    [0.9999, '1 m'],
    [335.3, '335 m'],
  ])('%s m of filament reads %s', (lengthM, text) => {
    expect(plain(formatFilament(lengthM, EN))).toBe(text)
  })

  it.each([
    [12.3, '12.3 mm³'],
    [999.9, '1 cm³'],
    [8000, '8 cm³'],
  ])('%s mm³ reads %s', (volume, text) => {
    expect(plain(formatVolume(volume, EN))).toBe(text)
  })

  it('takes any unit of the table', () => {
    expect(plain(formatWithUnit(11, 'mm3PerS', EN))).toBe('11 mm³/s')
    expect(formatWithUnit(NaN, 'W', EN)).toBe('–')
  })

  it.each([
    [0, '0 %'],
    [0.043, '4.3 %'],
    [0.4588, '46 %'],
    [1, '100 %'],
    [-0.021, '-2.1 %'],
    [NaN, '–'],
  ])('a share of %s reads %s', (share, text) => {
    expect(plain(formatPercent(share, EN)).replace('−', '-')).toBe(text)
  })
})

describe('formatHours', () => {
  it.each([
    [0, '0 s'],
    [0.4, '0 s'],
    [45, '45 s'],
    [59.4, '59 s'],
    [59.6, '1 min'],
    [45 * 60, '45 min'],
    [3599, '1 h'],
    [3600, '1 h'],
    [12_000, '3 h 20 min'],
    [3600 * 9.99, '9 h 59 min'],
    [3600 * 11 + 7 * 60, '11 h 5 min'],
    [3600 * 99.999, '100 h'],
    [3600 * 155.4, '155 h'],
    [-12_000, '−3 h 20 min'],
    [NaN, '–'],
    [Infinity, '–'],
  ])('%s s reads %s', (seconds, text) => {
    expect(plain(formatHours(seconds, EN))).toBe(text)
  })
})

describe('formatMoney', () => {
  it.each([
    [0, 'GBP', '£0.00'],
    [0.154, 'GBP', '£0.15'],
    [2.6, 'GBP', '£2.60'],
    [12.34, 'EUR', '€12.30'],
    [99.96, 'EUR', '€100'],
    [1234, 'EUR', '€1,230'],
    [416, 'JPY', 'JP¥416'],
    [-27.4, 'GBP', '-£27.40'],
    [NaN, 'GBP', '–'],
  ])('%s %s reads %s', (value, currency, text) => {
    expect(plain(formatMoney(value, currency, EN)).replace('−', '-')).toBe(text)
  })

  it('follows the locale', () => {
    expect(plain(formatMoney(2.6, 'EUR', 'de-DE'))).toBe('2,60 €')
  })
})

describe('ranges and signs', () => {
  it('shows both ends, or one text where they read the same', () => {
    const mass = (value: number): string => formatMass(value, EN)
    expect(plain(formatRange({ low: 7.4, mid: 8, high: 8.9 }, mass))).toBe('7.4 g – 8.9 g')
    expect(plain(formatRange({ low: 8, mid: 8, high: 8 }, mass))).toBe('8.0 g')
  })

  it('marks what is more, and not what reads as zero', () => {
    expect(withSign(56, '56 g')).toBe('+56 g')
    expect(withSign(-5, '-5 g')).toBe('-5 g')
    expect(withSign(0.0001, '0 g')).toBe('0 g')
    // Neither way is told of what is too small to be written.
    expect(withSign(0.004, formatMass(0.004, EN))).toBe(formatMass(-0.004, EN))
  })
})
