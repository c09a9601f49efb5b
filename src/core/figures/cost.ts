import type { CostRange, Material, Prices, Printer, Range } from '../model/figures.ts'

/** Where the money of one piece goes. */
interface CostLines {
  readonly filament: number
  readonly electricity: number
  readonly wear: number
  readonly failures: number
}

/**
 * Cost of one piece: filament off the spool with its waste, electricity, wear of the printer, and the share of prints that
 * fail: if a share p fails, 1/(1 − p) prints are paid for each good one. Low and high take mass and hours both at their low
 * and both at their high end. Prices count as given.
 */
export function costOf(
  spoolG: Range,
  timeS: Range,
  material: Material,
  printer: Printer,
  prices: Prices,
): CostRange {
  const at = (end: keyof Range): CostLines =>
    costLines(spoolG[end], timeS[end], material, printer, prices)
  return { low: sum(at('low')), mid: sum(at('mid')), high: sum(at('high')), ...at('mid') }
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

function sum(lines: CostLines): number {
  return lines.filament + lines.electricity + lines.wear + lines.failures
}
