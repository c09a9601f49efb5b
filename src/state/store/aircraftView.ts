import type { FrameDoubt } from '../../core/frame/frameDoubt.ts'
import type { AircraftLedger } from '../../core/frame/ledger.ts'
import type { FrameRow, FrameSum } from '../../core/frame/types.ts'
import { frameSummary, type FrameState, type FrameSummary } from './derived.ts'

/** The whole aircraft in grams, as its sections want it: the one frame, and what it lacks. */
export interface AircraftView {
  readonly sum: FrameSum
  readonly printed: readonly FrameRow[]
  readonly ledger: AircraftLedger
  readonly doubt: FrameDoubt
  /** Printed parts that no mass holds, by name: without figures, and not weighed. */
  readonly missing: readonly string[]
  /**
   * Whether all layers and the joints' screws are counted, so that the sum only moves when
   * something is changed.
   */
  readonly settled: boolean
}

const views = new WeakMap<FrameSummary, AircraftView>()

/** The same object while the frame's summary is the same. */
export function aircraftView(state: FrameState): AircraftView {
  const summary = frameSummary(state)
  const known = views.get(summary)
  if (known !== undefined) return known
  const { sum, runningCount } = summary
  const { addScrews = null, frame } = state
  const lacksScrews =
    addScrews === null && frame.aircraft.joints.some(({ fastener }) => fastener !== null)
  const view = {
    sum,
    printed: sum.rows,
    ledger: sum.ledger,
    doubt: sum.doubt,
    missing: sum.leftOut.filter(({ weighed }) => !weighed).map(({ name }) => name),
    settled: runningCount === 0 && !lacksScrews,
  }
  views.set(summary, view)
  return view
}
