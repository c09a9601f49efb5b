import type { Aircraft } from '../../model/aircraft.ts'
import type { Part } from '../../model/frame.ts'
import { LOAD_PICK_AUTO, type LoadPick } from '../../stiffness/part/chooseLoad.ts'
import type { SectionsAsk } from '../../stiffness/part/stiffPart.ts'
import { jointBoresOf, partLoad, type PartLoad } from './partLoad.ts'

/** How somebody said that a part is held and pushed. */
export interface TypedLoad {
  readonly pick: LoadPick
  /** Null for what the aircraft says. */
  readonly loadN: number | null
}

export const NOTHING_TYPED: TypedLoad = { pick: LOAD_PICK_AUTO, loadN: null }

/** By part id. */
export type TypedLoads = ReadonlyMap<string, TypedLoad>

/** How a part is held and pushed, as every place that asks says it to the pool. */
export interface LoadNow extends PartLoad, Pick<SectionsAsk, 'pick' | 'jointBores'> {
  readonly typed: boolean
}

/** What was typed goes before what the aircraft says. */
export function loadOf(
  part: Part,
  aircraft: Aircraft,
  { pick, loadN }: TypedLoad = NOTHING_TYPED,
): LoadNow {
  const known = partLoad(part, aircraft)
  const jointBores = jointBoresOf(part.id, aircraft)
  return { ...known, loadN: loadN ?? known.loadN, typed: loadN !== null, pick, jointBores }
}
