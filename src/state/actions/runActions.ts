import type { StoreApi } from 'zustand/vanilla'
import { RUNS_DEFAULTS } from '../../core/data/runs.ts'
import type { Runner } from '../../jobs/runner.ts'
import type { Meshes } from '../storage/meshes.ts'
import type { Actions } from './types.ts'
import type { AppState } from '../store/types.ts'
import type { History } from './history.ts'

/** Print runs of the present frame. */
export function createRunActions(
  store: StoreApi<AppState>,
  history: History,
): Pick<Actions, 'putRuns' | 'putPrinters' | 'swapPrinter'> {
  return {
    putPrinters(printers, what, gesture) {
      const { printers: _, ...frame } = store.getState().frame
      history.commit(what, printers.length === 0 ? frame : { ...frame, printers }, { gesture })
    },
    swapPrinter(id) {
      const { frame } = store.getState()
      const { printer, printers = [] } = frame
      const at = printers.findIndex((one) => one.id === id)
      const own = printers[at]
      if (own === undefined) return
      const { runs, clocks } = frame
      // What lay and was timed on the frame's own stays there.
      const kept = <T extends { readonly printerId?: string }>(one: T): T => {
        const { printerId = printer.id, ...rest } = one
        return (printerId === own.id ? rest : { ...rest, printerId }) as T
      }
      const byHand = runs?.byHand?.map((spots) => spots.map(kept))
      history.commit(`print on ${own.name}`, {
        ...frame,
        printer: own,
        printers: printers.with(at, printer),
        ...(runs && byHand && { runs: { ...runs, byHand } }),
        ...(clocks && { clocks: clocks.map(kept) }),
      })
    },
    putRuns(patch, what, gesture) {
      const { frame } = store.getState()
      const runs = { ...RUNS_DEFAULTS, ...frame.runs, ...patch }
      history.commit(what, { ...frame, runs }, { gesture })
    },
  }
}

/**
 * From the first time that all parts are counted, `runs` in the state follow the frame; what lays
 * them is fetched then.
 */
export function startLaying(
  store: StoreApi<AppState>,
  runner: Runner,
  meshes: Meshes,
  settleMs: number,
): void {
  const stop = store.subscribe(({ frame, work }) => {
    const kinds = frame.parts.map(({ id }) => work[id]?.kind)
    if (!kinds.includes('done') || kinds.some((kind) => kind !== 'done' && kind !== 'failed'))
      return
    stop()
    import('./laying.ts').then(
      ({ keepRunsLaid }) => {
        keepRunsLaid({ store, runner, meshes, settleMs })
      },
      () => {
        startLaying(store, runner, meshes, settleMs)
      },
    )
  })
}
