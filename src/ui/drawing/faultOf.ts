import type { PartWork } from '../../state/store/types.ts'
import { findingsOf } from '../ledger/partWork.ts'

/**
 * What is marked at a part in the drawing of the frame: that it could not be counted, or the
 * heaviest of what is wrong with its mesh. Null for what is only worth knowing, and for a count of
 * some layers.
 */
export function faultOf(work: PartWork): string | null {
  if (work.kind === 'failed') return 'not counted'
  const fault = findingsOf(work).find(
    ({ code, grade }) =>
      code !== 'counted-coarsely' && (grade === 'changes the grams' || grade === 'cannot print'),
  )
  return fault?.short ?? null
}
