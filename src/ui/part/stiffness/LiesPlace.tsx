import '../../styles/stiffness.css'
import { useMemo } from 'react'
import { loadOf } from '../../../core/aircraft/twin/loadOf.ts'
import type { LedgerRow } from '../../../state/store/derived.ts'
import { useAppState } from '../../appContext.ts'
import { useKeptLoad } from './keptLoads.ts'
import { WaysToLie } from './WaysToLie.tsx'

/** The six ways a part can lie, under the load it has on its own sheet. */
export function LiesPlace({ row }: { readonly row: LedgerRow }) {
  const { part, sum } = row
  const aircraft = useAppState((state) => state.frame.aircraft)
  const typed = useKeptLoad(part.id)
  const { loadN, tipG } = useMemo(() => loadOf(part, aircraft, typed), [part, aircraft, typed])
  const load = useMemo(() => ({ loadN, tipG }), [loadN, tipG])
  return sum === null ? null : <WaysToLie row={row} load={load} pick={typed.pick} />
}
