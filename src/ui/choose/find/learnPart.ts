import { loadOf } from '../../../core/aircraft/twin/loadOf.ts'
import {
  learnGives,
  type GivesAsks,
  type GivesModel,
} from '../../../core/choose/gives/learnGives.ts'
import type { CountedGeometry } from '../../../core/choose/partOptions.ts'
import type { Variety } from '../../../core/choose/variety.ts'
import { DRAFT_MM } from '../../../core/data/stiffness.ts'
import type { FrameRow } from '../../../core/frame/types.ts'
import type { Actions } from '../../../state/actions/types.ts'
import { keptLoad } from '../../part/stiffness/keptLoads.ts'
import type { FrameThen } from '../chosenParts.ts'

/**
 * How a part gives in its ways, asked of the pool. Answers are kept: a search goes on where it was.
 */
export function learnPart(
  row: FrameRow,
  { counted, variety }: { readonly counted: readonly CountedGeometry[]; readonly variety: Variety },
  { frame, setup }: FrameThen,
  { stiffenPart, sectionPart }: Pick<Actions, 'stiffenPart' | 'sectionPart'>,
  signal: AbortSignal,
  onDone: (done: number, all: number) => void,
): Promise<GivesModel | null> {
  const { id } = row.part
  const load = loadOf(row.part, frame.aircraft, keptLoad(id))
  const { pick, jointBores, loadN, tipG } = load
  const asks: GivesAsks = {
    async sections(patch) {
      const outcome = await sectionPart(id, { pick, jointBores }, signal, { recipe: patch })
      return outcome?.ok === true ? outcome.value : null
    },
    async solid({ patch, infillPct, material }, massG) {
      const wanted = { massG, jointBores, pick, loadN, tipG, cellMm: DRAFT_MM, wantTones: true }
      const other = { recipe: { ...patch, infillPct }, material }
      const outcome = await stiffenPart(id, wanted, { signal }, other)
      return outcome?.ok === true ? outcome.value : null
    },
  }
  return learnGives(row, counted, variety, setup, load, asks, onDone)
}
