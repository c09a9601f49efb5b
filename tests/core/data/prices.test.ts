import { describe, expect, it } from 'vitest'
import { MATERIALS } from '../../../src/core/data/materials.ts'
import {
  allCurrencies,
  materialInCurrency,
  startingPrices,
  CARBON_TYPICAL,
  CURRENCY_CODES,
  PRICES_DEFAULTS,
  carbonTypicalIn,
  currencyForLocale,
  priceMaterialIn,
  pricesIn,
} from '../../../src/core/data/prices.ts'

describe('currencyForLocale', () => {
  it.each([
    ['en-GB', 'GBP'],
    ['en-US', 'USD'],
    ['en', 'USD'],
    ['de-DE', 'EUR'],
    ['de-CH', 'CHF'],
    ['fr-CA', 'CAD'],
    ['ja', 'JPY'],
    ['sv', 'SEK'],
    ['hi-Latn-IN', 'INR'],
  ])('takes %s for %s', (locale, currency) => {
    expect(currencyForLocale(locale)).toBe(currency)
  })

  it.each(['', 'not a locale', 'xx', 'en-AQ'])('falls back to euro for %j', (locale) => {
    expect(currencyForLocale(locale)).toBe('EUR')
  })
})

describe('prices to start from', () => {
  it('in a currency without usual ones are 0 until typed, and never those of another', () => {
    // ISO 4217 (2015): KRW, South Korea; KWD, Kuwait, with three decimals.
    for (const code of ['KRW', 'KWD']) {
      expect(allCurrencies()).toContain(code)
      expect(startingPrices(code)).toMatchObject({
        currency: code,
        electricityPerKwh: 0,
        wearPerHour: 0,
      })
      const { pricePerKg } = materialInCurrency(MATERIALS[0]!, code)
      expect(pricePerKg).toMatchObject({ value: 0, mark: 'weak' })
      expect(pricePerKg.source).toContain(code)
    }
    expect(startingPrices('GBP')).toEqual(pricesIn('GBP'))
    expect(new Set(allCurrencies()).size).toBe(allCurrencies().length)
  })

  it.each(CURRENCY_CODES.map((code) => [code]))('%s has every price', (code) => {
    const prices = pricesIn(code)
    expect(prices.currency).toBe(code)
    for (const value of [prices.electricityPerKwh, prices.wearPerHour]) {
      expect(value).toBeGreaterThan(0)
    }
    expect(priceMaterialIn(MATERIALS[0]!, code).pricePerKg.value).toBeGreaterThan(0)
    // A currency the formatter knows.
    expect(() => new Intl.NumberFormat('en', { style: 'currency', currency: code })).not.toThrow()
  })

  it('are in euro by default and leave euro prices alone', () => {
    expect(PRICES_DEFAULTS.currency).toBe('EUR')
    for (const material of MATERIALS) expect(priceMaterialIn(material, 'EUR')).toEqual(material)
  })
})

describe('typical carbon frame', () => {
  // Common practice, no source: about 122 g and £30 for the 250 class.
  it('weighs about 122 g and costs about £30', () => {
    expect(carbonTypicalIn('GBP')[0]).toMatchObject({ massG: 122, price: 30 })
    expect(CARBON_TYPICAL[0]!.massG).toBe(122)
  })

  it('comes within the 90–140 g of common frames, each marked as unsourced', () => {
    for (const { massG, source } of CARBON_TYPICAL) {
      expect(massG).toBeGreaterThanOrEqual(90)
      expect(massG).toBeLessThanOrEqual(140)
      expect(source).toBe('common practice, no source')
    }
  })
})
