import { useMemo } from 'react'
import type { Aircraft } from '../../core/model/aircraft.ts'
import { aircraftView, type AircraftView } from '../../state/store/aircraftView.ts'
import { useActions, useAppState } from '../appContext.ts'

/** The aircraft as it stands, and its sums. */
export function useAircraft(): {
  readonly aircraft: Aircraft
  readonly view: AircraftView
  readonly currency: string
} {
  const aircraft = useAppState((state) => state.frame.aircraft)
  const view = useAppState(aircraftView)
  const currency = useAppState((state) => state.frame.prices.currency)
  return useMemo(() => ({ aircraft, view, currency }), [aircraft, view, currency])
}

/** Changes blocks of the aircraft; `what` are the words for undo. */
export function usePutAircraft(): (patch: Partial<Aircraft>, what: string) => void {
  return useActions().putAircraft
}
