import type { StoreApi } from 'zustand/vanilla'
import { laidRecipe } from '../../core/figures/laidRecipe.ts'
import type { Printer } from '../../core/model/figures.ts'
import type { Frame, Part, PartZone } from '../../core/model/frame.ts'
import type { Problem } from '../../core/model/problem.ts'
import { censusKey, geometryOf, readKey } from '../../jobs/keys.ts'
import type { AnalyseEvent } from '../../jobs/asks/partAsks.ts'
import type { MeshSource } from '../../jobs/asks/fileAsks.ts'
import type { Runner } from '../../jobs/runner.ts'
import type { Counted } from '../store/counted.ts'
import type { Meshes } from '../storage/meshes.ts'
import { beginWork, doneWork, failedWork, moveWork, scaleRough } from './partWork.ts'
import type { AppState, PartWork } from '../store/types.ts'

/** How long a changed recipe may settle before its layers are counted anew, ms. */
const SETTLE_MS = 150
/**
 * Progress of all jobs is shown together and no more often than this, ms: each showing draws the
 * ledger.
 */
const SHOW_MS = 200

export interface Analysis {
  /** Tries the parts again that failed. */
  retry(ids: readonly string[]): void
  settled(): Promise<void>
  close(): void
}

/** What a census is counted of. */
interface Due {
  readonly part: Part
  readonly printer: Printer
}

interface Job {
  readonly abort: AbortController
  readonly finished: Promise<void>
}

/**
 * Keeps `work` in step with the frame: whatever changed it (an edit, undo, a file), each part gets
 * the census of its present settings. A census is asked for by its key, so equal parts share one,
 * and an answer reaches only parts that still want that key: a late one changes nothing.
 */
export function createAnalysis(
  store: StoreApi<AppState>,
  runner: Runner,
  meshes: Meshes,
  counted: Counted,
): Analysis {
  /** The census each part wants, by part id. */
  let wanted: ReadonlyMap<string, string> = new Map()
  const jobs = new Map<string, Job>()
  const due = new Map<string, Due>()
  let timer: ReturnType<typeof setTimeout> | null = null
  /** How far each running job is, since progress was last shown. */
  const progress = new Map<string, number>()
  let progressTimer: ReturnType<typeof setTimeout> | null = null

  function show(changes: Readonly<Record<string, PartWork>>): void {
    if (Object.keys(changes).length === 0) return
    store.setState((state) => ({ work: { ...state.work, ...changes } }))
  }

  function showAll(key: string, next: (before: PartWork) => PartWork): void {
    progress.delete(key)
    const { work } = store.getState()
    const changes: Record<string, PartWork> = {}
    for (const [id, each] of wanted) {
      if (each === key) changes[id] = next(work[id] ?? { kind: 'queued' })
    }
    show(changes)
  }

  function showProgress(): void {
    progressTimer = null
    const { work } = store.getState()
    const changes: Record<string, PartWork> = {}
    for (const [id, key] of wanted) {
      const fraction = progress.get(key)
      const before = work[id]
      if (fraction === undefined || before === undefined) continue
      changes[id] = moveWork(before, { kind: 'progress', fraction })
    }
    progress.clear()
    show(changes)
  }

  function hear(key: string, event: AnalyseEvent): void {
    if (event.kind !== 'progress') {
      showAll(key, (before) => moveWork(before, event))
      return
    }
    progress.set(key, event.fraction)
    progressTimer ??= setTimeout(showProgress, SHOW_MS)
  }

  function sync({ parts, printer }: Pick<Frame, 'parts' | 'printer'>): void {
    const before = wanted
    wanted = new Map(parts.map((part) => [part.id, keyOf(part, printer)]))
    const { work } = store.getState()
    const next: Record<string, PartWork> = {}
    let moved = before.size !== wanted.size
    let isNew = false
    for (const part of parts) {
      const key = keyOf(part, printer)
      const old = before.get(part.id)
      const present = work[part.id]
      if (old === key && present !== undefined) {
        next[part.id] = present
        continue
      }
      moved = true
      isNew ||= old === undefined
      next[part.id] = startWork({ part, printer }, key, present, old)
    }
    if (moved) store.setState({ work: next })
    cancelUnwanted()
    plan(isNew ? 0 : SETTLE_MS)
  }

  function startWork(
    { part, printer }: Due,
    key: string,
    present: PartWork | undefined,
    old?: string,
  ): PartWork {
    const measured = readKey(part.meshHash, part.unit, part.keepsHairs)
    const read = counted.read(measured)
    const census = counted.census(key)
    if (read !== null && census !== null) return doneWork(read, census)
    if (!jobs.has(key)) due.set(key, { part, printer })
    const raw = meshes.rawOf(part.meshHash)
    const rough = raw === null ? null : scaleRough(raw, part.unit)
    return beginWork(present, old?.startsWith(`${measured}|`) === true, rough, read)
  }

  function cancelUnwanted(): void {
    const keys = new Set(wanted.values())
    for (const [key, job] of jobs) {
      if (keys.has(key)) continue
      jobs.delete(key)
      job.abort.abort()
    }
    for (const key of due.keys()) if (!keys.has(key)) due.delete(key)
  }

  function plan(delayMs: number): void {
    if (timer !== null) clearTimeout(timer)
    timer = null
    if (due.size === 0) return
    if (delayMs === 0) launchDue()
    else timer = setTimeout(launchDue, delayMs)
  }

  function launchDue(): void {
    timer = null
    for (const [key, each] of due) {
      const abort = new AbortController()
      const finished = countDue(key, each, abort.signal).finally(() => {
        if (jobs.get(key)?.abort === abort) jobs.delete(key)
      })
      jobs.set(key, { abort, finished })
    }
    due.clear()
  }

  async function countDue(key: string, each: Due, signal: AbortSignal): Promise<void> {
    const { part } = each
    const measured = readKey(part.meshHash, part.unit, part.keepsHairs)
    await counted.fetch(key, measured)
    if (signal.aborted) return
    if (finish(key, measured)) return
    const problem = await runAnalysis(key, each, signal)
    if (signal.aborted) return
    if (problem !== null) showAll(key, (before) => failedWork(before, problem))
    else finish(key, measured)
  }

  /** Not where figures of older settings stand until the new ones are there. */
  function wantsCoarse(key: string): boolean {
    const { work } = store.getState()
    return [...wanted].some(([id, each]) => each === key && work[id]?.kind !== 'done')
  }

  function finish(key: string, measured: string): boolean {
    const census = counted.census(key)
    const read = counted.read(measured)
    if (census === null || read === null) return false
    showAll(key, () => doneWork(read, census))
    return true
  }

  async function runAnalysis(
    key: string,
    { part, printer }: Due,
    signal: AbortSignal,
    again = true,
  ): Promise<Problem | null> {
    const source = await meshes.find(part.meshHash, part.fileName)
    const found = await Promise.all(
      part.zones.map(({ meshHash, fileName }) => meshes.find(meshHash, fileName)),
    )
    if (signal.aborted) return null
    if (source === null) return missingMesh(part)
    const lost = part.zones.find((_, i) => found[i] === null)
    if (lost !== undefined) return missingZone(part.name, lost)
    const zones = found.filter((zone) => zone !== null)
    const measured = readKey(part.meshHash, part.unit, part.keepsHairs)
    const known = counted.read(measured)
    if (known !== null) showAll(key, (before) => moveWork(before, { kind: 'read', read: known }))
    const outcome = await runner.run(
      {
        kind: 'analyse',
        source: takenAs(source, part),
        zones,
        unit: part.unit,
        pose: part.pose,
        geometry: geometryOf(laidRecipe(part, printer)),
        wantRead: known === null,
        wantCoarse: wantsCoarse(key),
        countsFully: part.countsFully === true,
      },
      {
        signal,
        onEvent(event: AnalyseEvent) {
          if (signal.aborted) return
          if (event.kind === 'read') counted.keepRead(measured, event.read)
          hear(key, event)
        },
      },
    )
    if (outcome.ok) {
      counted.keepCensus(key, outcome.value.census)
      return null
    }
    // The file on disk may have changed since it was dropped; storage has its own copy.
    if (again && outcome.problem.code === 'unreadable-file' && !signal.aborted) {
      meshes.forget(part.meshHash)
      for (const { meshHash } of part.zones) meshes.forget(meshHash)
      return runAnalysis(key, { part, printer }, signal, false)
    }
    return outcome.problem
  }

  const unsubscribe = store.subscribe((state, before) => {
    const { parts, printer } = state.frame
    // Of a printer only its habits matter here; the rest of it is for figures.
    if (parts === before.frame.parts && printer.habits === before.frame.printer.habits) return
    sync(state.frame)
  })
  sync(store.getState().frame)

  return {
    retry(ids) {
      const chosen = new Set(ids)
      const changes: Record<string, PartWork> = {}
      const { frame, work } = store.getState()
      for (const part of frame.parts) {
        if (!chosen.has(part.id) || work[part.id]?.kind !== 'failed') continue
        const { printer } = frame
        changes[part.id] = startWork({ part, printer }, keyOf(part, printer), undefined)
      }
      show(changes)
      plan(0)
    },
    async settled() {
      while (due.size > 0 || jobs.size > 0) {
        plan(0)
        await Promise.all([...jobs.values()].map((job) => job.finished))
      }
    },
    close() {
      unsubscribe()
      if (timer !== null) clearTimeout(timer)
      if (progressTimer !== null) clearTimeout(progressTimer)
      for (const job of jobs.values()) job.abort.abort()
      jobs.clear()
      due.clear()
    },
  }
}

/** The part's mesh, taken as the part says. */
export function takenAs(source: MeshSource, { keepsHairs }: Part): MeshSource {
  return keepsHairs === true ? { ...source, keepsHairs } : source
}

function keyOf(part: Part, printer: Printer): string {
  const { meshHash, unit, pose, zones, keepsHairs, countsFully } = part
  const zoneHashes = zones.map((zone) => zone.meshHash)
  const recipe = laidRecipe(part, printer)
  return censusKey(meshHash, unit, pose, recipe, zoneHashes, keepsHairs, countsFully)
}

/** The ledger has the part, but its mesh is neither in the project file nor in storage. */
export function missingMesh(part: Part): Problem {
  return {
    code: 'missing-mesh',
    message: `The mesh file “${part.fileName}” of “${part.name}” is not kept here any more.`,
    advice: 'Drop that file again and it takes its place; the settings are still there.',
  }
}

/** As `missingMesh`, of the zone of the part named. */
export function missingZone(name: string, zone: PartZone): Problem {
  return {
    code: 'missing-mesh',
    message: `The zone “${zone.fileName}” of “${name}” is not kept here any more.`,
    advice: 'Drop that file again and it takes its place, or take the zone from the part.',
  }
}
