import type { StoreApi } from 'zustand/vanilla'
import { RUNS_DEFAULTS } from '../../core/data/runs.ts'
import { layerWork } from '../../core/figures/hours.ts'
import type { LayerWork } from '../../core/figures/layerSeconds.ts'
import { laidRecipe } from '../../core/figures/laidRecipe.ts'
import type { PartFigures, Printer } from '../../core/model/figures.ts'
import type { RunSettings, RunWay } from '../../core/model/runs.ts'
import { handRuns, restOf, type HandPart } from '../../core/runs/handRuns.ts'
import { allPrinters } from '../../core/runs/runPrinters.ts'
import { reckonRuns, type ReckonedPart, type ReckonedRuns } from '../../core/runs/reckonRuns.ts'
import { waitingFor } from '../../core/runs/waiting.ts'
import type { RunsAnswer, RunsPart } from '../../jobs/asks/frameAsks.ts'
import type { Runner } from '../../jobs/runner.ts'
import type { Meshes } from '../storage/meshes.ts'
import { ledgerRows } from '../store/derived.ts'
import type { AppState, LaidRuns, RunRow } from '../store/types.ts'
import { takenAs } from './analysis.ts'

/** What lays runs needs. */
interface Laying {
  readonly store: StoreApi<AppState>
  readonly runner: Runner
  readonly meshes: Meshes
  /** Typing and dragging settle first: laying takes some seconds. */
  readonly settleMs: number
}

/** Asks a worker for print runs of the present frame. */
async function askForRuns(
  { store, runner, meshes }: Laying,
  { ways, draws, signal }: { ways: readonly RunWay[]; draws: boolean; signal: AbortSignal },
  byHand: RunSettings['byHand'] = [],
): Promise<RunsAnswer | null> {
  const state = store.getState()
  const { printer, printers = [], prices, runs: settings = RUNS_DEFAULTS } = state.frame
  const waiting = waitingFor(state.frame.aircraft.joints)
  const parts: RunsPart[] = []
  for (const row of ledgerRows(state)) {
    const { part, work, material, figures } = row
    if (work.kind === 'failed') continue
    const on = workOn(row, printer)
    if (on === null || figures === null) return null
    const works = allPrinters(state.frame).map((one) => [one.id, on(one)] as const)
    const source = await meshes.find(part.meshHash, part.fileName)
    if (source === null || signal.aborted) return null
    const { layerMm, firstLayerMm, brimMm, supportAngleDeg } = laidRecipe(part, printer)
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
      works: Object.fromEntries(works),
      spoolG: figures.spoolG.mid,
      waits: waiting.get(part.id) ?? 0,
      isCoupon: settings.coupons?.includes(part.id) === true,
    })
  }
  const asked = {
    parts: restOf(parts, byHand),
    workshop: { printer, printers, prices, settings },
    ways,
    draws,
  }
  const outcome = await runner.run({ kind: 'runs', ...asked }, { signal })
  return outcome.ok ? outcome.value : null
}

const works = new WeakMap<PartFigures, Map<Printer, LayerWork>>()

/**
 * Hours of a part's layers by printer, laid as the frame's own lays them; null until all are
 * counted. Figures are made anew with all they follow from.
 */
function workOn(
  { part, work, material, figures }: RunRow,
  own: Printer,
): ((printer: Printer) => LayerWork) | null {
  if (work.kind !== 'done' || figures === null) return null
  const { census } = work
  const known = works.get(figures) ?? new Map<Printer, LayerWork>()
  works.set(figures, known)
  return (printer) => {
    const made = known.get(printer) ?? layerWork(census, laidRecipe(part, own), material, printer)
    known.set(printer, made)
    return made
  }
}

/**
 * Keeps `runs` in the state laid for the present frame: anew whenever pieces, beds or the way to
 * divide them change, and until then as they were last laid.
 */
export function keepRunsLaid(laying: Laying): void {
  const { store, settleMs } = laying
  let running: AbortController | null = null
  let asked = ''
  const check = (): void => {
    const state = store.getState()
    const { frame, runs } = state
    const hasAll = frame.parts.every(({ id }) =>
      ['done', 'failed'].includes(state.work[id]?.kind ?? ''),
    )
    const key = layingKey(state)
    if (runs !== null && runs.isOld !== (runs.key !== key)) {
      store.setState({ runs: { ...runs, isOld: runs.key !== key } })
    }
    if (key === asked && (running !== null || runs?.key === key)) return
    running?.abort()
    running = null
    asked = key
    if (!hasAll || runs?.key === key) return
    const stop = new AbortController()
    running = stop
    setTimeout(() => void lay(key, stop), runs === null ? 0 : settleMs)
  }
  const lay = async (key: string, stop: AbortController): Promise<void> => {
    if (stop.signal.aborted) return
    const { way, byHand } = store.getState().frame.runs ?? RUNS_DEFAULTS
    const asking = { ways: [way], draws: false, signal: stop.signal }
    const answer = await askForRuns(laying, asking, byHand)
    if (stop.signal.aborted) return
    running = null
    store.setState({ runs: laidRuns(key, answer ?? { ways: {}, unfit: [], plans: {} }, laying) })
  }
  store.subscribe((state, before) => {
    if (state.frame.id !== before.frame.id) store.setState({ runs: null })
    if (state.frame !== before.frame || state.work !== before.work) check()
  })
  check()
}

/**
 * All that decides where pieces lie. Beds filled for hours or money depend on every figure of them,
 * beds filled as they go on none, unless several printers share them.
 */
function layingKey(state: AppState): string {
  const { printer, printers = [], prices, runs = RUNS_DEFAULTS } = state.frame
  const { byHand = [], ...settings } = runs
  const rows = ledgerRows(state).filter(({ work }) => work.kind !== 'failed')
  const rest = restOf(
    rows.map(({ part }) => ({ ...part, count: part.quantity + part.spares })),
    byHand,
  )
  return JSON.stringify([
    state.frame.id,
    settings,
    [printer, ...printers].map(({ id, bedMm }) => [id, bedMm]),
    [...waitingFor(state.frame.aircraft.joints)],
    rest.map(({ id, meshHash, unit, count, mirrored, pose, keepsHairs, recipe, materialId }) => {
      const how = [materialId, recipe.layerMm, recipe.firstLayerMm, recipe.brimMm]
      return [id, meshHash, unit, count, mirrored, pose, keepsHairs, how]
    }),
    runs.way === 'fewest beds' && printers.length === 0
      ? null
      : [
          printer,
          printers,
          prices,
          rows.map(({ figures }) => [figures?.timeS.mid, figures?.spoolG.mid]),
        ],
  ])
}

const NONE: readonly Printer[] = []

function laidRuns(key: string, answer: RunsAnswer, laying: Laying): LaidRuns {
  let last: { readonly of: readonly unknown[]; readonly reckoned: ReckonedRuns } | null = null
  const [laid = []] = Object.values(answer.ways)
  return {
    key,
    isOld: false,
    answer,
    layOthers: (ways, signal) => askForRuns(laying, { ways, draws: true, signal }),
    reckon(rows, { printer, printers = NONE, prices, runs: settings = RUNS_DEFAULTS }, others) {
      const workshop = { printer, printers, prices, settings }
      if (others !== undefined) return reckonRuns(partsOf(rows, printer), others, workshop)
      const parts = rows.flatMap(({ part, figures, work }) => [
        figures,
        part.quantity + part.spares,
        work.kind,
      ])
      const of = [printer, printers, prices, settings.order, settings.byHand, ...parts]
      if (last?.of.length !== of.length || !last.of.every((one, i) => one === of[i])) {
        const all = [...handRuns(settings.byHand ?? [], rows.map(handPart), workshop), ...laid]
        last = { of, reckoned: reckonRuns(partsOf(rows, printer), all, workshop) }
      }
      return last.reckoned
    },
  }
}

function handPart({ part, material }: RunRow): HandPart {
  return { id: part.id, material, layerMm: part.recipe.layerMm }
}

function partsOf(rows: readonly RunRow[], printer: Printer): readonly ReckonedPart[] {
  return rows.flatMap((row): ReckonedPart[] => {
    const { part, material, figures } = row
    if (figures === null) return []
    const pieces = part.quantity + part.spares
    return [{ id: part.id, pieces, material, figures, workOn: workOn(row, printer) }]
  })
}
