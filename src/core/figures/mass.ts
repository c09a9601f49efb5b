import type { Material } from '../model/figures.ts'
import type { Spread } from './spread.ts'

/** Same filament, other maker: plain PLA alone differs by ±6 % (1.17–1.32 g/cm³ over data sheets of several makers). */
const DENSITY_FLOOR = 0.06
/** A spool's own density, typed by the user. */
const DENSITY_TYPED = 0.01
/** 1.75 ± 0.02 mm, the tolerance suppliers state (W. J. Main, MSc thesis, Univ. Oklahoma 2025): 2.3 % of mass. */
const DIAMETER = 0.023
/**
 * Solid bars came out 11.5 % over their nominal section (W. J. Main 2025, table 1, 18 bars, PA12-CF) and 0.2–5.5 % over
 * (K. Sharma et al., IOP Conf. Ser. Mater. Sci. Eng. 1168, 2021, 012022, PLA): real prints run heavy, not light.
 */
export const OVERSIZE = 0.11
/**
 * Packing: the share of a solid region's envelope that ends up as plastic. The middle is 1, lines laid as width × height ×
 * speed, which is what V. E. Kuznetsov et al., Polymers 2018, 10(3), 313, doi 10.3390/polym10030313, table 1, gives for twenty
 * nozzles and layers. The low end is a line with round ends laid at the same spacing, (w − h)·h + π·h²/4: 0.893 of the
 * rectangle at 0.4 × 0.2 mm. A weighed print tells which it is: its grams ÷ ours correct every part after it.
 */
const PACKING = { low: 0.893, mid: 1 } as const
/** A count of real lines and their connections met weighed sparse blocks within 5 % (P. Ravi 2020, doi 10.1186/s41205-020-00063-8). */
export const INFILL_MODEL = 0.05

/** Grams of `depositMm3` of laid lines: density in g/cm³, less where foaming filament is laid thin. */
export function massOfG(depositMm3: number, material: Material): number {
  return (depositMm3 * PACKING.mid * material.flow * material.densityGCm3.value) / 1000
}

/** How far the spool's density may lie from the one in the table, as shares. */
function densitySpread(material: Material): Spread {
  if (material.densityTyped) return { low: DENSITY_TYPED, high: DENSITY_TYPED }
  const { value } = material.densityGCm3
  const [low, high] = material.densityRangeGCm3
  return {
    low: Math.max(DENSITY_FLOOR, 1 - low / value),
    high: Math.max(DENSITY_FLOOR, high / value - 1),
  }
}

/** Every error of a mass that does not come from counting the part: density, filament diameter, packing, oversize. */
export function plasticSpreads(material: Material): readonly Spread[] {
  return [
    densitySpread(material),
    { low: DIAMETER, high: DIAMETER },
    { low: 1 - PACKING.low, high: 0 },
    { low: 0, high: OVERSIZE },
  ]
}
