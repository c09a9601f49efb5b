import type { Material, Printer } from '../model/figures.ts'

/**
 * Heat a hot end and a bed take, W for each °C: E/MJ = −0.056 + 7e-6 · nozzle · t + 89e-6 · bed ·
 * t, t in minutes (Hopkins et al. 2021, as given on ammap.eu; the unit of t inferred from the
 * size): 114 W at 210 and 60 °C, most of it the bed.
 */
const NOZZLE = 7e-6 / 60e-6
const BED = 89e-6 / 60e-6
/** What a printer's own draw is stated for: PLA. */
const STATED = heatW(210, 60)

function heatW(nozzleC: number, bedC: number): number {
  return NOZZLE * nozzleC + BED * bedC
}

/**
 * What a printer draws from the wall on average while it prints a plastic, W: its draw on PLA,
 * scaled by the heat.
 */
export function powerOf(
  printer: Pick<Printer, 'powerW'>,
  { nozzleC, bedC }: Pick<Material, 'nozzleC' | 'bedC'>,
): number {
  return (printer.powerW * heatW(nozzleC.value, bedC.value)) / STATED
}
