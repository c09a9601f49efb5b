import type { StoreApi } from 'zustand/vanilla'
import { RUNS_DEFAULTS } from '../../core/data/runs.ts'
import { laidRecipe } from '../../core/figures/laidRecipe.ts'
import { layerWork } from '../../core/figures/hours.ts'
import type { RunsPart } from '../../jobs/protocol.ts'
import type { Runner } from '../../jobs/runner.ts'
import type { Meshes } from '../storage/meshes.ts'
import { ledgerRows } from '../store/derived.ts'
import type { Actions, AppState } from '../store/types.ts'
import { takenAs } from './analysis.ts'
import type { History } from './history.ts'

/** Print runs of the present frame. */
export function createRunActions(
  store: StoreApi<AppState>,
  runner: Runner,
  history: History,
  meshes: Meshes,
): Pick<Actions, 'putRuns' | 'layRuns'> {
  return {
    putRuns(patch, what, gesture) {
      const { frame } = store.getState()
      const runs = { ...RUNS_DEFAULTS, ...frame.runs, ...patch }
      history.commit(what, { ...frame, runs }, { gesture })
    },
    async layRuns(signal) {
      const state = store.getState()
      const { printer, prices, runs: settings = RUNS_DEFAULTS } = state.frame
      const parts: RunsPart[] = []
      for (const { part, work, material, figures } of ledgerRows(state)) {
        if (work.kind === 'failed') continue
        if (work.kind !== 'done' || figures === null) return null
        const source = await meshes.find(part.meshHash, part.fileName)
        if (source === null || signal.aborted) return null
        const recipe = laidRecipe(part, printer)
        const { layerMm, firstLayerMm, brimMm, supportAngleDeg } = recipe
        parts.push({
          id: part.id,
          count: part.quantity + part.spares,
          mirrored: part.mirrored,
          source: takenAs(source, part),
          unit: part.unit,
          pose: part.pose,
          material,
          layerMm,
          firstLayerMm,
          brimMm,
          supportAngleDeg,
          work: layerWork(work.census, recipe, material, printer),
          spoolG: figures.spoolG.mid,
        })
      }
      const workshop = { printer, prices, settings }
      const outcome = await runner.run({ kind: 'runs', parts, workshop }, { signal })
      return outcome.ok ? outcome.value : null
    },
  }
}
