import type { SharedError } from '../model/doubt.ts'
import type { Material, Printer } from '../model/figures.ts'

/**
 * Starting prices per kg, as a share that holds 95 % of cases: PLA and PETG 15–25 for 20, ASA 22–35
 * for 28, PA-CF 60–110 for 85 (judgement, no source).
 */
const PRICE_GUESSED = 0.3
/**
 * A printer's draw: 114 W (Hopkins et al. 2021, as given on ammap.eu) and 189.5 W (3dprintscape.com)
 * measured in PLA on two machines, for the 150 of an ordinary one.
 */
export const POWER = 0.27
/**
 * Half to twice as often: nobody knows his own rate before some fifty prints (common practice, no
 * source).
 */
const FAILURES_FACTOR = 2

/** What is unsure of a spool's price; nothing once its own is typed. */
export function priceErrors({ id, name, pricePerKg }: Material): readonly SharedError[] {
  if (pricePerKg.mark === 'user') return []
  return [{ id: `price:${id}`, name: `Price of ${name}`, effect: PRICE_GUESSED / 2 }]
}

/** What is unsure of a printer's draw from the wall. */
export function powerError({ id }: Printer): SharedError {
  return { id: `power:${id}`, name: 'Power of the printer', effect: POWER / 2 }
}

/** What is unsure of how often prints fail, for a cost that goes with exp(`failing` × rate / its middle). */
export function failureError(failing: number): SharedError {
  const effect = (failing * Math.log(FAILURES_FACTOR)) / 2
  return { id: 'failures', name: 'How often prints fail', effect }
}
