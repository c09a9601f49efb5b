import type { Outcome } from '../core/model/problem.ts'
import { askName } from './askName.ts'
import { SHELF_PLACES } from './shelfPlaces.ts'
import { createPool, type PoolJob, type Spawn } from './pool.ts'
import type { Answer, Ask, JobEvent, JobKind, JobTable } from './protocol.ts'
import type { Runner } from './runner.ts'

/** Idle workers go after this long: they hold meshes, and a new one starts in some 50 ms. */
const IDLE_MS = 30_000
/** More than this gains little for a dozen parts and takes memory for each. */
const MOST_WORKERS = 4
/**
 * One core is the page's own until the aircraft's first picture is there, or for so long where none
 * is asked for. On two cores, calm, the sample's picture came 0.6 to 1.0 s after its first figures
 * instead of 1.3 to 1.4 s, and its last layers as soon as before.
 */
const ALONE_MS = 3000
/**
 * And while a hand is at work: for so long after each press. What was begun is done to its end. On
 * two cores, the page's thread slowed down four times, an infill key was shown after 112 to 128 ms
 * in the middle, and after 232 to 240 beside two workers that counted and solved.
 */
const HAND_MS = 800

export interface PoolRunnerOptions {
  readonly spawn: Spawn
  /** As the browser tells it; workers are started up to `min(cores, 4)`, at least one. */
  readonly cores: number
  /**
   * Leaves a core to a page until its first picture is there, and whenever what is handed over here
   * is called.
   */
  readonly onHand?: (tell: () => void) => void
}

/**
 * Runs jobs in workers. All files get their first look before any layers are counted; small files
 * go first.
 */
export function createPoolRunner({ spawn, cores, onHand }: PoolRunnerOptions): Runner {
  const size = Math.max(1, Math.min(cores, MOST_WORKERS))
  const pool = createPool<Ask, JobEvent, Answer>({
    spawn,
    size,
    idleMs: IDLE_MS,
    memory: SHELF_PLACES,
  })
  // Each reason to leave a core to the page, with what ends it by itself.
  const reasons = new Map<'picture' | 'hand', ReturnType<typeof setTimeout> | null>()
  const leave = (reason: 'picture' | 'hand', forMs: number | null): void => {
    clearTimeout(reasons.get(reason) ?? undefined)
    reasons.set(
      reason,
      forMs === null
        ? null
        : setTimeout(() => {
            takeBack(reason)
          }, forMs),
    )
    pool.resize(Math.max(1, size - 1))
  }
  const takeBack = (reason: 'picture' | 'hand'): void => {
    clearTimeout(reasons.get(reason) ?? undefined)
    if (reasons.delete(reason) && reasons.size === 0) pool.resize(size)
  }
  let isFirst = onHand !== undefined
  if (isFirst) leave('picture', null)
  onHand?.(() => {
    leave('hand', HAND_MS)
  })
  return {
    async run(ask, { onEvent, signal } = {}) {
      if (isFirst) leave('picture', ALONE_MS)
      isFirst = false
      const job = { ...planOf(ask), signal, onEvent: onEvent as (event: JobEvent) => void }
      // The pool does not know which answer belongs to which ask; the handler in the worker does.
      const outcome: Outcome<unknown> = await pool.run(job)
      if (ask.kind === 'draw') takeBack('picture')
      return outcome as Outcome<JobTable[(typeof ask)['kind']]['answer']>
    },
    close() {
      for (const timer of reasons.values()) clearTimeout(timer ?? undefined)
      reasons.clear()
      pool.close()
    },
  }
}

/** The jobs someone waits for come first. */
const PRIORITY: Readonly<Record<JobKind, number>> = {
  mesh: 0,
  shape: 1,
  draw: 0,
  look: 0,
  cut: 0,
  pack: 0,
  unpack: 0,
  split: 0,
  poses: 0,
  offers: 1,
  clashes: 1,
  ways: 0,
  repeats: 0,
  holes: 1,
  open: 1,
  toolpath: 1,
  analyse: 2,
  runs: 2,
  stiff: 1,
  sections: 1,
}

/** Nobody’s hand waits for these. */
const IN_TURN: ReadonlySet<JobKind> = new Set([
  'analyse',
  'clashes',
  'holes',
  'runs',
  'sections',
  'shape',
  'stiff',
])

function planOf(ask: Ask): PoolJob<Ask, JobEvent> {
  const priority = PRIORITY[ask.kind]
  const common = {
    ask,
    name: askName(ask),
    priority,
    urgent: !IN_TURN.has(ask.kind),
    keeps: null,
  }
  switch (ask.kind) {
    case 'open':
    case 'toolpath':
      return { ...common, weight: ask.blob.size }
    case 'analyse':
    case 'mesh':
    case 'split':
    case 'poses':
    case 'shape':
    case 'look':
    case 'cut':
    case 'stiff':
    case 'sections':
      return { ...common, weight: ask.source.blob.size, keeps: ask.source.hash }
    case 'draw':
      // To the worker that drew before, which has the meshes.
      return { ...common, weight: 0, keeps: 'drawing' }
    case 'runs':
      return { ...common, weight: 0, keeps: 'runs' }
    case 'offers':
    case 'clashes':
    case 'ways':
    case 'repeats':
      // Not to the one that draws: a turned view would wait for it.
      return { ...common, weight: 0, keeps: 'joints' }
    case 'holes':
      return { ...common, weight: 0, keeps: 'joints' }
    case 'pack':
    case 'unpack':
      return { ...common, weight: 0 }
  }
}
