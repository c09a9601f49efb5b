import type { TwinSetup } from '../../model/aircraft.ts'
import { PLATES } from '../../data/plates.ts'
import { printedBendingNm } from '../twin/bending.ts'
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
 * The part's twin from plate; null while its layers are not counted. A soft part has one only when
 * its thickness is typed.
 */
export function twinEntry(one: ReportPart, setup: TwinSetup): TwinEntry | null {
  const { part, material, census, facts } = one
  if (census === null || facts === null) return null
  const { kind, words } = flatness(census)
  const { id: partId, name, quantity } = part
  const entry = { partId, name, quantity, kind, words, twin: null }
  const { outline } = facts
  if (kind === 'no' || outline === null) return entry
  if (isSoft(one) && !((setup.thicknessMm[partId] ?? 0) > 0)) {
    return { ...entry, words: 'Flat, but soft on purpose: it stays printed.' }
  }
  const { layers } = census
  const bendingNm = printedBendingNm(layers, part.recipe, material.youngsGPa.value, outline)
  return { ...entry, twin: flatTwin({ partId, outline, bendingNm }, PLATES[setup.plate], setup) }
}
