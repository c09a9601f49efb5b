import { mixDoubts, rangeOfFigure } from '../doubt/figureDoubt.ts'
import type { FigureDoubt } from '../model/doubt.ts'
import type { CostRange, Material, Prices, Printer } from '../model/figures.ts'

/** Where the money of one piece goes. */
interface CostLines {
  readonly filament: number
  readonly electricity: number
  readonly wear: number
  readonly failures: number
}

/** Cost of one piece with what it may be off by. */
interface CostFigure extends CostRange {
  readonly doubt: FigureDoubt
}

/**
 * Cost of one piece: filament off the spool with its waste, electricity, wear of the printer, and
 * the share of prints that fail: if a share p fails, 1/(1 − p) prints are paid for each good one.
 * Its doubt is that of the grams for the filament and that of the hours for the rest; what fails
 * is of both. Prices count as given.
 */
export function costOf(
  spoolG: number,
  timeS: number,
  doubt: { readonly spool: FigureDoubt; readonly time: FigureDoubt },
  material: Material,
  printer: Printer,
  prices: Prices,
): CostFigure {
  const lines = costLines(spoolG, timeS, material, printer, prices)
  const once = lines.filament + lines.electricity + lines.wear
  const filamentShare = once > 0 ? lines.filament / once : 0
  const mixed = mixDoubts([
    { share: filamentShare, doubt: doubt.spool },
    { share: once > 0 ? 1 - filamentShare : 0, doubt: doubt.time },
  ])
  return { ...rangeOfFigure(once + lines.failures, mixed), ...lines, doubt: mixed }
}

function costLines(
  spoolG: number,
  timeS: number,
  material: Material,
  printer: Printer,
  prices: Prices,
): CostLines {
  const hours = timeS / 3600
  const filament = (spoolG / 1000) * material.pricePerKg.value * (1 + prices.wastePct / 100)
  const electricity = hours * (printer.powerW / 1000) * prices.electricityPerKwh
  const wear = hours * prices.wearPerHour
  const failing = Math.min(0.99, Math.max(0, prices.failurePct / 100))
  return {
    filament,
    electricity,
    wear,
    failures: (filament + electricity + wear) * (1 / (1 - failing) - 1),
  }
}
