import { PACKING_MID } from '../doubt/factors.ts'
import type { Material } from '../model/figures.ts'

/**
 * A count of real lines and their connections met weighed sparse blocks within 5 % (P. Ravi 2020,
 * doi 10.1186/s41205-020-00063-8).
 */
export const INFILL_MODEL = 0.05
/** How far the count of walls and skins of one part may be off (common practice, no source). */
export const SOLID_MODEL = 0.02

/**
 * Volume of plastic in laid lines, mm³: what lies line beside line leaves channels open, the more
 * so the larger the `packed` share; less where foaming filament is laid thin.
 */
export function plasticMm3(depositMm3: number, packed: number, material: Material): number {
  return depositMm3 * (1 - (1 - PACKING_MID) * packed) * material.flow
}

/** Grams of a volume of plastic, before it foams; the density in g/cm³. */
export function massOfG(plasticVolumeMm3: number, material: Material): number {
  return (plasticVolumeMm3 * material.densityGCm3.value) / 1000
}
