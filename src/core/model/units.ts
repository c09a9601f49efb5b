import type { LengthUnit } from './mesh.ts'

/**
 * Millimetres in one unit: the inch is 25.4 mm exactly, the foot twelve of them (international yard
 * and pound agreement, 1959).
 */
const MM_PER_UNIT: Readonly<Record<LengthUnit, number>> = {
  micron: 0.001,
  millimetre: 1,
  centimetre: 10,
  inch: 25.4,
  foot: 304.8,
  metre: 1000,
}

/** The unit's name behind “drawn in”. */
export const UNIT_PLURAL: Readonly<Record<LengthUnit, string>> = {
  micron: 'microns',
  millimetre: 'millimetres',
  centimetre: 'centimetres',
  inch: 'inches',
  foot: 'feet',
  metre: 'metres',
}

/** What a length in `unit` is multiplied by to become millimetres. */
export function unitToMm(unit: LengthUnit): number {
  return MM_PER_UNIT[unit]
}
