import type { Aircraft } from '../../core/model/aircraft.ts'
import type { MassDoubt } from '../../core/frame/doubt.ts'
import type { AircraftLedger, PrintedPart } from '../../core/frame/ledger.ts'
import { aircraftLedger } from '../../core/frame/ledger.ts'
import { massDoubt } from '../../core/frame/massDoubt.ts'
import { ledgerRows, type LedgerRow } from './derived.ts'
import type { AppState } from './types.ts'

/** The whole aircraft in grams: printed parts and everything bought. */
export interface AircraftView {
  readonly printed: readonly PrintedPart[]
  readonly ledger: AircraftLedger
  readonly doubt: MassDoubt
  /** Printed parts that have no figures, by name; they are missing from every sum. */
  readonly missing: readonly string[]
  /** Whether every part's layers are counted, so that the sum only moves when something is changed. */
  readonly settled: boolean
}

let last: {
  readonly rows: readonly LedgerRow[]
  readonly aircraft: Aircraft
  readonly view: AircraftView
} | null = null

/** The same object while the ledger's rows and the aircraft are the same. */
export function aircraftView(state: Pick<AppState, 'frame' | 'work'>): AircraftView {
  const rows = ledgerRows(state)
  const { aircraft } = state.frame
  if (last?.rows === rows && last.aircraft === aircraft) return last.view
  const printed = rows.flatMap(({ part, material, figures }): PrintedPart[] =>
    figures === null
      ? []
      : [{ id: part.id, name: part.name, quantity: part.quantity, material, figures }],
  )
  const view = {
    printed,
    ledger: aircraftLedger(printed, aircraft),
    doubt: massDoubt(printed, aircraft),
    missing: rows.flatMap((row) => (row.figures === null ? [row.part.name] : [])),
    settled: rows.every((row) => row.progress === null),
  }
  last = { rows, aircraft, view }
  return view
}

/** Everything that flies, g; null while only printed parts are known, which fly nowhere. */
export function allUpMassG(state: Pick<AppState, 'frame' | 'work'>): number | null {
  return state.frame.aircraft.items.length === 0 ? null : aircraftView(state).ledger.basicMassG
}
