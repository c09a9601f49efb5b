import { useCallback, useMemo, useRef } from 'react'
import type { PartPatch } from '../../state/actions/types.ts'
import { useActions } from '../appContext.ts'

/**
 * How a field of one part writes: `edit` is an undo step of its own, `drag` belongs to the gesture
 * until `settle`.
 */
export interface PartEdit {
  readonly edit: (patch: PartPatch) => void
  readonly drag: (patch: PartPatch) => void
  readonly settle: () => void
}

export function usePartEdit(partId: string): PartEdit {
  const { updateParts } = useActions()
  const gesture = useRef(0)
  const edit = useCallback(
    (patch: PartPatch) => {
      updateParts([partId], patch)
    },
    [partId, updateParts],
  )
  const drag = useCallback(
    (patch: PartPatch) => {
      updateParts([partId], patch, `drag ${partId} ${gesture.current}`)
    },
    [partId, updateParts],
  )
  const settle = useCallback(() => {
    gesture.current = performance.now()
  }, [])
  return useMemo(() => ({ edit, drag, settle }), [edit, drag, settle])
}
