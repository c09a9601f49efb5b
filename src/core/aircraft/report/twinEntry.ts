import type { TwinSetup } from '../../model/aircraft.ts'
import { PLATES } from '../../data/plates.ts'
import type { PlateStock } from '../../stiffness/part/plateStiffness.ts'
import type { StiffPart } from '../../stiffness/part/stiffPart.ts'
import { plateBendingNm, printedBendingNm } from '../twin/bending.ts'
import { flatness } from '../twin/flatness.ts'
import { flatTwin } from '../twin/flatTwin.ts'
import type { ReportPart, TwinEntry } from './types.ts'

/**
 * Below this a plastic is rubber: the part is soft for a reason, and plate would not do its duty.
 * GPa (judgement, no source)
 */
const SOFT_GPA = 0.5

/** Whether the part is soft on purpose and so stays printed whatever the frame is made of. */
export function isSoft({ part, material }: Pick<ReportPart, 'part' | 'material'>): boolean {
  return part.role === 'soft' || material.youngsGPa.value < SOFT_GPA
}

/**
 * The plate whose stiffness is to be solved beside the part's: as stiff by strips of its layers;
 * null for a part that has no twin.
 */
export function plateBeside(one: ReportPart, setup: TwinSetup): PlateStock | null {
  const { twin } = twinEntry({ ...one, solidBendingNm: undefined }, setup) ?? { twin: null }
  return twin === null
    ? null
    : { youngsGPa: twin.plate.youngsGPa.value, thicknessMm: twin.equalMm.mid }
}

/** Bending stiffness by the solid model, N·m² per metre of width; see `PartLook.solidBendingNm`. */
export function solidBendingNm(
  { figures, plateNMm }: Pick<StiffPart, 'figures' | 'plateNMm'>,
  { youngsGPa, thicknessMm }: PlateStock,
): number | undefined {
  if (plateNMm === null || !(plateNMm > 0)) return undefined
  return (plateBendingNm(youngsGPa, thicknessMm) * figures.stiffness.mid) / plateNMm
}

/**
 * The part's twin from plate; null while its layers are not counted. A soft part has one only when
 * its thickness is typed.
 */
export function twinEntry(one: ReportPart, setup: TwinSetup): TwinEntry | null {
  const { part, material, census, traits } = one
  if (census === null || traits === null) return null
  const { kind, words } = flatness(census)
  const { id: partId, name, quantity } = part
  const by = one.solidBendingNm === undefined ? 'layers' : 'solid'
  const entry = { partId, name, quantity, kind, words, by, twin: null } as const
  const { outline } = traits
  if (kind === 'no' || outline === null) return entry
  if (isSoft(one) && !((setup.thicknessMm[partId] ?? 0) > 0)) {
    return { ...entry, words: 'Flat, but soft on purpose: it stays printed.' }
  }
  const { layers } = census
  const bendingNm =
    one.solidBendingNm ?? printedBendingNm(layers, part.recipe, material.youngsGPa.value, outline)
  return { ...entry, twin: flatTwin({ partId, outline, bendingNm }, PLATES[setup.plate], setup) }
}
