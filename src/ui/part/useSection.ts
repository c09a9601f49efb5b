import { useCallback } from 'react'
import type { PartSection } from '../../core/census/section/types.ts'
import { laidRecipe } from '../../core/figures/laidRecipe.ts'
import type { Part } from '../../core/model/frame.ts'
import { useActions, useAppState } from '../appContext.ts'
import { useAnswer } from '../drawing/useAnswer.ts'
import type { CutPlane } from './cutPlane.ts'

/** At the very ends a plane meets nothing. */
const END_SHARE = 0.002

/** The part cut by a worker at a plane; the last cut stays until the next is there. */
export function useSection(part: Part, { axis, share }: CutPlane): PartSection | null {
  const { cutPart } = useActions()
  const printer = useAppState((state) => state.frame.printer)
  const { id, meshHash, unit, pose, keepsHairs, zones } = part
  // Infill and pattern move nothing of what is cut.
  const laid = JSON.stringify({
    ...laidRecipe(part, printer),
    infillPct: 0,
    zonePcts: 0,
    pattern: '',
  })
  const meshes = [meshHash, ...zones.map((zone) => zone.meshHash)].join(' ')
  const inside = Math.min(1 - END_SHARE, Math.max(END_SHARE, share))
  const ask = useCallback(
    () => cutPart(id, axis, inside),
    // The worker takes the part as it then is: another recipe, mesh or pose is another question.
    // eslint-disable-next-line react-hooks/exhaustive-deps
    [cutPart, id, axis, inside, laid, meshes, unit, pose, keepsHairs],
  )
  return useAnswer(ask)
}
