import { electricityErrors, failureError, powerError, priceErrors } from '../doubt/costFactors.ts'
import { mixDoubts, rangeOfFigure } from '../doubt/figureDoubt.ts'
import type { FigureDoubt, SharedError } from '../model/doubt.ts'
import type { CostRange, Material, Prices, Printer } from '../model/figures.ts'
import { powerOf } from './power.ts'

/** Cost of one piece with what it may be off by. */
export interface CostFigure extends CostRange {
  readonly doubt: FigureDoubt
}

/** Never more than this share of prints fails: 100 tries for a good one. */
const MOST_FAILING = 0.99

/**
 * Of the prints still running a share r fails every hour: of prints this long 1 − (1 − r)^hours.
 * 0–1
 */
export function failingShare(
  hours: number,
  { failurePctPerHour }: Pick<Prices, 'failurePctPerHour'>,
): number {
  return 1 - (1 - Math.min(1, Math.max(0, failurePctPerHour / 100))) ** hours
}

/**
 * Cost of one piece: filament off the spool with its waste, electricity, wear of the printer, and
 * the prints that fail: 1/(1 − p) are paid for each good one, where a share p fails.
 *
 * Its doubt is that of the grams and the price for the filament, that of hours, draw and the price
 * of a kilowatt-hour for electricity, that of hours for wear, and for what fails that of hours and
 * of the rate; what somebody typed is surer than what a class or a currency starts with. Waste and
 * wear count as given.
 *
 * `printS` are the hours of the print that the piece is part of: a failure takes all of it.
 */
export function costOf(
  spoolG: number,
  timeS: number,
  doubt: { readonly spool: FigureDoubt; readonly time: FigureDoubt },
  material: Material,
  printer: Printer,
  prices: Prices,
  printS: number = timeS,
): CostFigure {
  const hours = timeS / 3600
  const filament = (spoolG / 1000) * material.pricePerKg.value * (1 + prices.wastePct / 100)
  const electricity = hours * (powerOf(printer, material) / 1000) * prices.electricityPerKwh
  const wear = hours * prices.wearPerHour
  const once = filament + electricity + wear
  const failing = Math.min(MOST_FAILING, failingShare(printS / 3600, prices))
  const failures = once * (1 / (1 - failing) - 1)

  // Of a piece that costs nothing no share is worth a doubt.
  const perMoney = once > 0 ? 1 / once : 0
  // The whole goes with exp(λ · hours), λ = −ln(1 − r): that far hours and rate reach into it
  // besides.
  const exponent = failing < MOST_FAILING ? -Math.log(1 - failing) : 0
  const drawn = [powerError(printer), ...electricityErrors(prices)]
  const mixed = mixDoubts([
    { share: filament * perMoney, doubt: also(doubt.spool, priceErrors(material)) },
    // What the hours are off by of their own is one error, wherever they are paid for.
    {
      share: (electricity + wear) * perMoney + (once > 0 ? exponent : 0),
      doubt: doubt.time,
    },
    { share: electricity * perMoney, doubt: { shared: drawn, own: 0 } },
    { share: once > 0 ? 1 : 0, doubt: { shared: [failureError(exponent, prices)], own: 0 } },
  ])
  const { low, mid, high } = rangeOfFigure(once + failures, mixed)
  return { low, mid, high, filament, electricity, wear, failures, doubt: mixed }
}

function also(doubt: FigureDoubt, errors: readonly SharedError[]): FigureDoubt {
  return { shared: [...doubt.shared, ...errors], own: doubt.own }
}
