import { createContext, useContext, useMemo, type ReactNode } from 'react'
import type { Aircraft } from '../../core/model/aircraft.ts'
import type { Frame } from '../../core/model/frame.ts'
import { aircraftView, type AircraftView } from '../../state/store/aircraftView.ts'
import { boughtAircraft, ledgerRows, type LedgerRow } from '../../state/store/derived.ts'
import { useAppState } from '../appContext.ts'
import { useLate } from '../useLate.ts'

/**
 * A frame, what its joints take among the bought items, with what follows from it; all of one
 * moment.
 */
interface Shown {
  readonly frame: Frame
  readonly rows: readonly LedgerRow[]
  readonly view: AircraftView
}

const ShownContext = createContext<Shown | null>(null)

/**
 * Hands the open sections the frame a moment late: their figures are drawn in small steps after the
 * change, between which the page takes input. Fields and the sections' summaries read the state
 * itself and follow at once.
 */
export function ShownAircraft({ children }: { readonly children: ReactNode }) {
  const frame = useAppState((state) => state.frame)
  const rows = useAppState(ledgerRows)
  const view = useAppState(aircraftView)
  const aircraft = useAppState(boughtAircraft)
  const now = useMemo(
    () => ({ frame: { ...frame, aircraft }, rows, view }),
    [frame, aircraft, rows, view],
  )
  const shown = useLate(now)
  return <ShownContext value={shown}>{children}</ShownContext>
}

export function useShown(): Shown {
  const shown = useContext(ShownContext)
  if (shown === null) throw new Error('A section is drawn outside ShownAircraft.')
  return shown
}

/** The aircraft and its sums, for what is drawn inside an open section. */
export function useShownAircraft(): {
  readonly aircraft: Aircraft
  readonly view: AircraftView
  readonly currency: string
} {
  const { frame, view } = useShown()
  return { aircraft: frame.aircraft, view, currency: frame.prices.currency }
}
