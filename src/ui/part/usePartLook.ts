import { useCallback } from 'react'
import type { View } from '../../core/drawing/types.ts'
import type { Part } from '../../core/model/frame.ts'
import type { Finding } from '../../core/model/mesh.ts'
import type { LookAnswer } from '../../state/store/types.ts'
import { useActions } from '../appContext.ts'
import { useAnswer } from '../drawing/useAnswer.ts'
import { findingPoints } from './partMarks.ts'

/** Room beside the part for signs and their words; on a phone for signs alone. px */
const MARGIN_PX = { roomy: 84, narrow: 40 } as const

/** A part drawn by a worker, so wide and high; the last drawing stays until the next is there. */
export function usePartLook(
  part: Part,
  findings: readonly Finding[],
  view: View,
  widthPx: number,
  heightPx: number,
): LookAnswer | null {
  const { lookAtPart } = useActions()
  const { id, meshHash, unit, pose, keepsHairs, zones, recipe } = part
  const { supportAngleDeg } = recipe
  const meshes = [meshHash, ...zones.map((zone) => zone.meshHash)].join(' ')
  const points = JSON.stringify(findingPoints(findings))
  const ask = useCallback(() => {
    const marginPx = widthPx >= 520 ? MARGIN_PX.roomy : MARGIN_PX.narrow
    const pointsMm = JSON.parse(points) as ReturnType<typeof findingPoints>
    return lookAtPart(id, { view, sheet: { widthPx, heightPx, marginPx }, pointsMm })
    // The worker takes the part as it then is: another mesh, pose or angle is another question.
    // eslint-disable-next-line react-hooks/exhaustive-deps
  }, [
    lookAtPart,
    id,
    view,
    widthPx,
    heightPx,
    points,
    meshes,
    unit,
    pose,
    keepsHairs,
    supportAngleDeg,
  ])
  return useAnswer(ask)
}
