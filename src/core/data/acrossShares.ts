import type { Material } from '../model/figures.ts'

/*
 * Young's modulus across the layers over that in plane, of printed bars: maker data sheets
 * (wiki.polymaker.com) as copied in EricPedley/wing_optimization c1846c5,
 * polymaker_detailed_tds.csv.
 */
const READ: Readonly<Record<string, number>> = {
  pla: 3065 / 3427,
  'tough-pla': 1984 / 2151,
  'foaming-pla': 1,
  abs: 2081 / 2247,
  asa: 1965 / 2379,
  petg: 1899 / 2117,
  pc: 2371 / 2497,
}
/** The middle of those above without foam. */
const UNFILLED = 0.9
/** PLA with short fibres, 2213 of 3281 MPa: the one filled plastic of the sheets. */
const FIBRE = 2213 / 3281
/**
 * Plastics bonded across by less than this share of their strength hold fibres that lie in the
 * layers.
 */
const FIBRE_STRENGTH_SHARE = 0.6

/**
 * How much softer a printed plastic is across its layers than along them, as a share of the
 * modulus.
 */
export function acrossShareOf(
  material: Pick<Material, 'id' | 'strengthInPlaneMPa' | 'strengthAcrossMPa'>,
): number {
  const strength = material.strengthAcrossMPa.value / material.strengthInPlaneMPa.value
  return READ[material.id] ?? (strength < FIBRE_STRENGTH_SHARE ? FIBRE : UNFILLED)
}
