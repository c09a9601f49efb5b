import type { DrawAnswer, HolesAnswer } from '../../jobs/asks/frameAsks.ts'
import type { Outcome } from '../../core/model/problem.ts'
import type { Ask, JobKind, JobTable } from '../../jobs/protocol.ts'
import type { RunOptions, Runner } from '../../jobs/runner.ts'
import type { Storage } from '../storage/storage.ts'
import { createLatest, type Latest } from '../store/latest.ts'

/**
 * Two of each part of a large frame. What is drawn is as large as its sheet, not as its mesh: some
 * ten kilobytes.
 */
const KEPT_DRAWINGS = 60
const DRAWINGS: ReadonlySet<JobKind> = new Set(['look', 'cut', 'shape'])
/** How parts give, in all their ways, and where frames are in their own way: some kilobytes each. */
const KEPT_MODELS = 600
const MODELS: ReadonlySet<JobKind> = new Set(['stiff', 'sections', 'clashes', 'holes'])

/**
 * The same runner, which remembers what was drawn, cut, held against each other and reckoned: a
 * sheet that is come back to asks for the same again, and so do a frame of which something changed
 * that no answer shows and a page opened the next day.
 */
export function keepAnswers(
  runner: Runner,
  storage: Pick<Storage, 'loadAnswer' | 'saveAnswer'>,
): Runner {
  const drawings = createLatest<unknown>(KEPT_DRAWINGS)
  const models = createLatest<unknown>(KEPT_MODELS)
  const cuts = new Map<string, Promise<unknown>>()
  /** Null for what is not kept, and for what a hand is turning, which comes once. */
  const keptOf = (ask: Ask): Latest<unknown> | null => {
    if (MODELS.has(ask.kind)) return models
    return DRAWINGS.has(ask.kind) || (ask.kind === 'draw' && ask.samples > 1) ? drawings : null
  }

  async function findAnswer<K extends JobKind>(
    key: string,
    ask: JobTable[K]['ask'] & { readonly kind: K },
    options: RunOptions<K> | undefined,
  ): Promise<Outcome<JobTable[K]['answer']>> {
    const before = await storage.loadAnswer(key).catch(() => null)
    if (before !== null) return { ok: true, value: before as JobTable[K]['answer'] }
    const outcome = await runner.run(ask, options)
    // Only to be had sooner: what cannot be stored is worked out again at the next visit.
    if (outcome.ok && isWhole(ask, outcome.value))
      storage.saveAnswer(key, outcome.value).catch(ignore)
    return outcome
  }

  return {
    close: () => runner.close(),
    async run(ask, options) {
      const kept = keptOf(ask)
      if (kept === null) return runner.run(ask, options)
      const key = keyOf(ask)
      type Known = Awaited<ReturnType<typeof runner.run<(typeof ask)['kind']>>>
      const known = kept.get(key) as Known | undefined
      if (known !== undefined) return known
      // Two who ask for the same cut at once wait for one; what can be called off is each one's own.
      const out = ask.kind === 'cut' ? (cuts.get(key) as Promise<Known> | undefined) : undefined
      if (out !== undefined) return out
      const asked = findAnswer(key, ask, options)
      if (ask.kind === 'cut') cuts.set(key, asked)
      try {
        const outcome = await asked
        if (outcome.ok && isWhole(ask, outcome.value)) kept.set(key, outcome)
        return outcome
      } finally {
        cuts.delete(key)
      }
    },
  }
}

const ignore = () => undefined

/** A file itself says nothing here: its hash stands beside it. */
function keyOf(ask: Ask): string {
  return JSON.stringify(ask, (_, value: unknown) => (isRecord(value) ? inOrder(value) : value))
}

const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

/** A frame that was stored and opened names its settings in another order. */
function inOrder(record: Readonly<Record<string, unknown>>): Record<string, unknown> {
  return Object.fromEntries(Object.entries(record).toSorted(([a], [b]) => (a < b ? -1 : 1)))
}

/** Not where a mesh could not be read, which may be otherwise the next time. */
function isWhole(ask: Ask, answer: unknown): boolean {
  if (ask.kind === 'holes') return (answer as HolesAnswer).length === ask.parts.length
  return ask.kind !== 'draw' || (answer as DrawAnswer).left.length === 0
}
