import { useMemo } from 'react'
import { costBlame, type CostBlame } from '../../core/frame/costBlame.ts'
import { ledgerRows } from '../../state/store/derived.ts'
import { useAppState } from '../appContext.ts'

/** Which errors carry the doubt of the frame's cost, spares included; the largest first. */
export function useCostBlame(): readonly CostBlame[] {
  const rows = useAppState(ledgerRows)
  return useMemo(
    () =>
      costBlame(
        rows.flatMap(({ part, figures }) =>
          figures === null ? [] : [{ pieces: part.quantity + part.spares, figures }],
        ),
      ),
    [rows],
  )
}
