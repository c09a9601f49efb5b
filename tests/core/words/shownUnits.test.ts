import fc from 'fast-check'
import { afterEach, describe, expect, it } from 'vitest'
import {
  formatFilament,
  formatMass,
  formatVolume,
  formatWithUnit,
} from '../../../src/core/words/format.ts'
import {
  keptOf,
  massUnit,
  METRIC,
  shownAs,
  shownOf,
  showUnits,
} from '../../../src/core/words/shownUnits.ts'

/*
 * Factors: NIST Special Publication 811 (2008), appendix B.8, with the exact ones in bold: inch 2.54 E−02 m, foot
 * 3.048 E−01 m, ounce (avoirdupois) 2.834 952 E−02 kg, square inch 6.4516 E−04 m², cubic inch 1.638
 * 706 E−05 m³, ounce per
 * square foot 3.051 517 E−01 kg/m². All digits of the ounce: NIST Handbook 44, appendix C, 28.349 523 125 g.
 */
afterEach(() => {
  showUnits(METRIC)
})

const imperial = () => {
  showUnits({ length: 'in', mass: 'oz' })
}

describe('units shown', () => {
  it('are millimetres and grams until others are chosen', () => {
    expect(shownAs('mm')).toEqual({ label: 'mm', per: 1, finer: 0 })
    expect(massUnit()).toBe('g')
    expect(formatWithUnit(25.4, 'mm', 'en')).toBe('25.4\u{A0}mm')
  })

  it.each([
    ['mm', 'in', 25.4],
    ['m', 'ft', 0.3048],
    ['g', 'oz', 28.349523125],
    ['mm²', 'in²', 645.16],
    ['dm²', 'in²', 0.064516],
    ['mm³', 'in³', 16387.06],
    ['g/dm²', 'oz/ft²', 3.051517],
    ['EUR/dm²', 'EUR/in²', 1 / 0.064516],
  ])('%s are shown as %s, %d to one', (unit, label, per) => {
    imperial()
    const as = shownAs(unit)
    expect(as.label).toBe(label)
    expect(as.per / per).toBeCloseTo(1, 6)
  })

  it('change apart from each other: inches with grams, ounces with millimetres', () => {
    showUnits({ length: 'in', mass: 'g' })
    expect([shownAs('mm').label, shownAs('g').label, shownAs('g/dm²').label]).toEqual([
      'in',
      'g',
      'g/dm²',
    ])
    showUnits({ length: 'mm', mass: 'oz' })
    expect([shownAs('mm').label, shownAs('g').label, shownAs('g/dm²').label]).toEqual([
      'mm',
      'oz',
      'oz/ft²',
    ])
  })

  it('leave speeds, densities and prices a kilogram alone', () => {
    imperial()
    for (const unit of ['mm/s', 'mm/s²', 'mm³/s', 'g/cm³', 'EUR/kg', 'EUR/kWh', '°C', 'm/s'])
      expect(shownAs(unit)).toEqual({ label: unit, per: 1, finer: 0 })
  })

  it('give back what was typed, through what is kept', () => {
    imperial()
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 9_999_999 }),
        fc.integer({ min: 0, max: 5 }),
        fc.constantFrom('mm', 'g', 'dm²', 'EUR/dm²'),
        (digits, decimals, unit) => {
          const typed = Number((digits / 10 ** decimals).toFixed(decimals))
          const as = shownAs(unit)
          expect(shownOf(keptOf(typed, as), as)).toBeCloseTo(typed, 8 - String(digits).length)
        },
      ),
    )
    expect(keptOf(1, shownAs('mm'))).toBe(25.4)
    expect(keptOf(0.3, shownAs('mm'))).toBe(7.62)
    expect(keptOf(1, shownAs('g'))).toBe(28.349523125)
  })

  it('are written by every formatter', () => {
    imperial()
    expect(formatMass(28.349523125, 'en')).toBe('1.000\u{A0}oz')
    expect(formatMass(1500, 'en')).toBe('52.911\u{A0}oz')
    expect(formatWithUnit(0.2, 'mm', 'en')).toBe('0.0079\u{A0}in')
    expect(formatVolume(16387.064, 'de')).toBe('1\u{A0}in³')
    expect(formatFilament(0.3048, 'en')).toBe('1\u{A0}ft')
    expect(formatFilament(0.254, 'en')).toBe('10\u{A0}in')
  })
})
