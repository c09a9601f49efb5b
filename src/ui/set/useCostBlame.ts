import { useMemo } from 'react'
import { costBlame, type CostBlame } from '../../core/frame/costBlame.ts'
import { frameSum } from '../../state/store/derived.ts'
import { useLateAppState } from '../useLateAppState.ts'

/** Which errors carry the doubt of the frame's cost, spares included; the largest first. */
export function useCostBlame(): readonly CostBlame[] {
  const { doubt } = useLateAppState(frameSum)
  return useMemo(() => costBlame(doubt), [doubt])
}
