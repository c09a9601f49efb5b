import { isUsualElectricity, isUsualFailureRate } from '../data/prices.ts'
import { isUsualDraw } from '../data/printers.ts'
import type { SharedError } from '../model/doubt.ts'
import type { Material, Prices, Printer } from '../model/figures.ts'
import { errorId } from './errorId.ts'

/**
 * Starting prices per kg, as a share that holds 95 % of cases: PLA and PETG 15–25 for 20, ASA 22–35
 * for 28, PA-CF 60–110 for 85 (judgement, no source).
 */
const PRICE_GUESSED = 0.3
/**
 * A printer's draw: 114 W (Hopkins et al. 2021, as given on ammap.eu) and 189.5 W
 * (3dprintscape.com) measured in PLA on two machines, for the 150 of an ordinary one.
 */
export const POWER_UNTYPED = 0.27
/** A draw typed in was read off a plug meter (common practice, no source). */
const POWER_TYPED = 0.05
/**
 * Households of one currency pay two thirds to one and a third of its usual (judgement, no source).
 */
const ELECTRICITY_GUESSED = 0.33
/** Half to twice as often, of a rate nobody counted (common practice, no source). */
const FAILURES_GUESSED = 2
/**
 * A rate typed in was counted: some twenty failures are known to ±2/√20 of their number, 95 % of a
 * Poisson count.
 */
const FAILURES_TYPED = 1 + 2 / Math.sqrt(20)

/** What is unsure of a spool's price; nothing once its own is typed. */
export function priceErrors({ id, name, pricePerKg }: Material): readonly SharedError[] {
  if (pricePerKg.mark === 'user') return []
  return [{ id: errorId('price', id), name: `Price of ${name}`, effect: PRICE_GUESSED / 2 }]
}

/** What is unsure of a printer's draw from the wall; little once its own is typed. */
export function powerError({ id, powerW }: Pick<Printer, 'id' | 'powerW'>): SharedError {
  const reach = isUsualDraw(powerW) ? POWER_UNTYPED : POWER_TYPED
  return { id: errorId('power', id), name: 'Power of the printer', effect: reach / 2 }
}

/** What is unsure of the price of electricity; nothing once it is typed. */
export function electricityErrors(prices: Prices): readonly SharedError[] {
  if (!isUsualElectricity(prices)) return []
  return [{ id: 'electricity', name: 'Price of electricity', effect: ELECTRICITY_GUESSED / 2 }]
}

/**
 * What is unsure of how often prints fail, for a cost that goes with exp(`failing` × rate / its
 * middle); less once the rate is typed.
 */
export function failureError(failing: number, prices: Prices): SharedError {
  const factor = isUsualFailureRate(prices) ? FAILURES_GUESSED : FAILURES_TYPED
  const effect = (failing * Math.log(factor)) / 2
  return { id: 'failures', name: 'How often prints fail', effect }
}
