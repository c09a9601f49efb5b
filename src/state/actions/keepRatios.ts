import { changesSince, pieceOf } from '../../core/frame/weighIn.ts'
import type { Frame, Part } from '../../core/model/frame.ts'
import { materialOf } from '../store/materialOf.ts'
import { frameSum } from '../store/derived.ts'
import type { AppState } from '../store/types.ts'

/**
 * The next frame, in which each weighing that stops holding keeps what was calculated of the piece
 * as it was weighed, so that scale ÷ calculated carries over to the piece as it will be. A part
 * whose layers are not all counted has nothing to keep.
 */
export function keepRatios(before: Pick<AppState, 'frame' | 'work'>, next: Frame): Frame {
  const known = new Map(before.frame.parts.map((part) => [part.id, part]))
  const isLost = (part: Part): boolean => {
    const was = known.get(part.id)
    return (
      was !== undefined &&
      part.weighIn?.calculatedG === null &&
      holds(was, before.frame) &&
      !holds(part, next)
    )
  }
  if (!next.parts.some(isLost)) return next
  const rows = new Map(frameSum(before).rows.map((row) => [row.part.id, row]))
  const parts = next.parts.map((part) => {
    const work = before.work[part.id]
    const row = rows.get(part.id)
    const isCounted = work?.kind === 'done' && work.newerFraction === null
    const calculatedG = row?.figures?.massG.mid
    if (part.weighIn === undefined || calculatedG === undefined || !isCounted || !isLost(part)) {
      return part
    }
    return { ...part, weighIn: { ...part.weighIn, calculatedG } }
  })
  return { ...next, parts }
}

/** Whether the part is still what lay on the scale. */
function holds(part: Part, frame: Frame): boolean {
  const { weighIn } = part
  if (weighIn === undefined) return false
  const now = pieceOf(part, materialOf(frame, part.materialId), frame.printer)
  return changesSince(weighIn.of, now).length === 0
}
