import type { DrawAnswer } from '../../jobs/asks/frameAsks.ts'
import type { Ask } from '../../jobs/protocol.ts'
import type { Runner } from '../../jobs/runner.ts'
import { createLatest, type Latest } from '../store/latest.ts'

/**
 * Two of each part of a large frame. What is drawn is as large as its sheet, not as its mesh: some
 * ten kilobytes.
 */
const KEPT_DRAWINGS = 60
/** How parts give, in all their ways: some kilobytes each. */
const KEPT_MODELS = 600

/**
 * The same runner, which remembers what was drawn, cut, held against each other and reckoned last: a sheet that is come back
 * to asks for the same again, and so does a frame of which something changed that no answer shows.
 */
export function keepAnswers(runner: Runner): Runner {
  const drawings = createLatest<unknown>(KEPT_DRAWINGS)
  const models = createLatest<unknown>(KEPT_MODELS)
  const cuts = new Map<string, Promise<unknown>>()
  /** Null for what is not kept, and for what a hand is turning, which comes once. */
  const keptOf = (ask: Ask): Latest<unknown> | null => {
    if (ask.kind === 'stiff' || ask.kind === 'sections') return models
    // Asked by every visit of a sheet that shows the frame: all its meshes would be read again.
    if (ask.kind === 'clashes') return drawings
    const isDrawn = ask.kind === 'look' || ask.kind === 'cut'
    return isDrawn || (ask.kind === 'draw' && ask.samples > 1) ? drawings : null
  }
  return {
    close: () => runner.close(),
    async run(ask, options) {
      const kept = keptOf(ask)
      if (kept === null) return runner.run(ask, options)
      // The file itself says nothing here: its hash stands beside it.
      const key = JSON.stringify(ask)
      type Known = Awaited<ReturnType<typeof runner.run<(typeof ask)['kind']>>>
      const known = kept.get(key) as Known | undefined
      if (known !== undefined) return known
      // Two who ask for the same cut at once wait for one; what can be called off is each one's own.
      const out = ask.kind === 'cut' ? (cuts.get(key) as Promise<Known> | undefined) : undefined
      if (out !== undefined) return out
      const asked = runner.run(ask, options)
      if (ask.kind === 'cut') cuts.set(key, asked)
      try {
        const outcome = await asked
        if (outcome.ok && !isPart(outcome.value)) kept.set(key, outcome)
        return outcome
      } finally {
        cuts.delete(key)
      }
    },
  }
}

/** Whether a mesh could not be read, which may be otherwise the next time. */
function isPart(answer: unknown): boolean {
  return ((answer as Partial<DrawAnswer> | null)?.left?.length ?? 0) > 0
}
