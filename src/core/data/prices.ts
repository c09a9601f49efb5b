import type { Material, Prices } from '../model/figures.ts'
import type { CarbonFrame } from '../model/frame.ts'

/**
 * Rough household figures to start from (common practice, no source): what a euro of filament costs
 * there, and electricity per kWh. Not exchange rates; the builder types the real prices.
 */
const CURRENCIES = {
  EUR: { perEuro: 1, electricityPerKwh: 0.3 },
  GBP: { perEuro: 0.93, electricityPerKwh: 0.27 },
  USD: { perEuro: 1, electricityPerKwh: 0.17 },
  CAD: { perEuro: 1.4, electricityPerKwh: 0.17 },
  AUD: { perEuro: 1.5, electricityPerKwh: 0.33 },
  NZD: { perEuro: 1.7, electricityPerKwh: 0.35 },
  CHF: { perEuro: 1.1, electricityPerKwh: 0.29 },
  SEK: { perEuro: 11, electricityPerKwh: 2 },
  NOK: { perEuro: 12, electricityPerKwh: 1.5 },
  DKK: { perEuro: 7.5, electricityPerKwh: 2.7 },
  PLN: { perEuro: 4.3, electricityPerKwh: 1.1 },
  CZK: { perEuro: 25, electricityPerKwh: 7 },
  HUF: { perEuro: 400, electricityPerKwh: 40 },
  JPY: { perEuro: 160, electricityPerKwh: 31 },
  INR: { perEuro: 60, electricityPerKwh: 8 },
  BRL: { perEuro: 5.5, electricityPerKwh: 0.9 },
  ZAR: { perEuro: 19, electricityPerKwh: 3.5 },
} as const

export type CurrencyCode = keyof typeof CURRENCIES

export const CURRENCY_CODES = Object.keys(CURRENCIES) as readonly CurrencyCode[]

/**
 * Currency of the countries in `CURRENCIES`; every other region starts in euro, which the user can
 * change.
 */
const REGION_CURRENCY: Readonly<Record<string, CurrencyCode>> = {
  GB: 'GBP',
  GG: 'GBP',
  IM: 'GBP',
  JE: 'GBP',
  US: 'USD',
  PR: 'USD',
  CA: 'CAD',
  AU: 'AUD',
  NZ: 'NZD',
  CH: 'CHF',
  LI: 'CHF',
  SE: 'SEK',
  NO: 'NOK',
  DK: 'DKK',
  PL: 'PLN',
  CZ: 'CZK',
  HU: 'HUF',
  JP: 'JPY',
  IN: 'INR',
  BR: 'BRL',
  ZA: 'ZAR',
}

/**
 * Where wear, waste and failures start (common practice, no source): a tuned home machine fails 3–8
 * % of its prints, and those last two to three hours.
 */
const WEAR_EUR_PER_HOUR = 0.1
const WASTE_PCT = 3
const FAILURE_PCT_PER_HOUR = 2

/**
 * The currency to start in for a BCP 47 locale such as `de-CH`: by its region, or by the likeliest
 * region of a bare language (`ja` → JP). Euro where nothing is known; never throws.
 */
export function currencyForLocale(locale: string): CurrencyCode {
  try {
    const region = new Intl.Locale(locale).maximize().region ?? ''
    return REGION_CURRENCY[region] ?? 'EUR'
  } catch {
    return 'EUR'
  }
}

/** Prices to start from in a currency. */
export function pricesIn(currency: CurrencyCode): Prices {
  const { perEuro, electricityPerKwh } = CURRENCIES[currency]
  return {
    currency,
    electricityPerKwh,
    wearPerHour: roundMoney(WEAR_EUR_PER_HOUR * perEuro),
    wastePct: WASTE_PCT,
    failurePctPerHour: FAILURE_PCT_PER_HOUR,
  }
}

/** Every ISO 4217 currency that the runtime knows, those with usual prices first. */
export function allCurrencies(): readonly string[] {
  const usual: readonly string[] = CURRENCY_CODES
  return [...usual, ...Intl.supportedValuesOf('currency').filter((code) => !usual.includes(code))]
}

/**
 * Prices to start from in any currency. Where none are usual the amounts are 0 until they are
 * typed: a number taken over
 * from another currency would look like one of this.
 */
export function startingPrices(currency: string): Prices {
  const code = CURRENCY_CODES.find((one) => one === currency)
  if (code !== undefined) return pricesIn(code)
  return { ...PRICES_DEFAULTS, currency, electricityPerKwh: 0, wearPerHour: 0 }
}

/** A built-in material in any currency, its price 0 where none is usual, see `startingPrices`. */
export function materialInCurrency(material: Material, currency: string): Material {
  const code = CURRENCY_CODES.find((one) => one === currency)
  if (code !== undefined) return priceMaterialIn(material, code)
  const source = `no price is usual in ${currency} here: type yours`
  return { ...material, pricePerKg: { value: 0, mark: 'weak', source } }
}

/**
 * Whether a price of electricity is still the one its currency starts with: nobody typed his own.
 */
export function isUsualElectricity({ currency, electricityPerKwh }: Prices): boolean {
  const code = CURRENCY_CODES.find((one) => one === currency)
  return code !== undefined && CURRENCIES[code].electricityPerKwh === electricityPerKwh
}

/** The same of how often prints fail. */
export function isUsualFailureRate({ failurePctPerHour }: Prices): boolean {
  return failurePctPerHour === FAILURE_PCT_PER_HOUR
}

export const PRICES_DEFAULTS: Prices = pricesIn('EUR')

/** A built-in material with its euro price per kg turned into the usual price in `currency`. */
export function priceMaterialIn(material: Material, currency: CurrencyCode): Material {
  const value = roundMoney(material.pricePerKg.value * CURRENCIES[currency].perEuro)
  return { ...material, pricePerKg: { ...material.pricePerKg, value } }
}

/**
 * What one piece of hardware costs by the hundred, in euro (common practice, no source). A post's
 * is of any length.
 */
const HARDWARE_EUR = { screw: 0.08, nut: 0.05, washer: 0.02, insert: 0.12, standoff: 0.5 } as const

/** A usual price of one piece; 0 in a currency that no price is usual in here. */
export function hardwarePriceIn(kind: keyof typeof HARDWARE_EUR, currency: string): number {
  const code = CURRENCY_CODES.find((one) => one === currency)
  return code === undefined ? 0 : roundMoney(HARDWARE_EUR[kind] * CURRENCIES[code].perEuro)
}

/** A bought frame to start a comparison from. */
export interface TypicalCarbonFrame extends CarbonFrame {
  readonly id: string
  readonly name: string
  readonly source: string
}

const CARBON_GBP: readonly TypicalCarbonFrame[] = [
  {
    id: 'typical-250',
    name: 'Typical 250-class quad frame',
    massG: 122,
    price: 30,
    source: 'common practice, no source',
  },
  {
    id: 'light-250',
    name: 'Light 250-class quad frame',
    massG: 90,
    price: 40,
    source: 'common practice, no source',
  },
  {
    id: 'heavy-250',
    name: 'Heavy 250-class quad frame',
    massG: 140,
    price: 25,
    source: 'common practice, no source',
  },
]

/**
 * Bought carbon frames to compare with, priced in `currency`; the first is the one to start from.
 */
export function carbonTypicalIn(currency: CurrencyCode): readonly TypicalCarbonFrame[] {
  const perPound = CURRENCIES[currency].perEuro / CURRENCIES.GBP.perEuro
  return CARBON_GBP.map((frame) => ({ ...frame, price: roundMoney(frame.price * perPound) }))
}

/** `carbonTypicalIn('EUR')`. */
export const CARBON_TYPICAL: readonly TypicalCarbonFrame[] = carbonTypicalIn('EUR')

/** Two significant digits: these are rough figures, and 31.2903 would pretend otherwise. */
function roundMoney(value: number): number {
  return Number(value.toPrecision(2))
}
