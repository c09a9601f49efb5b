import { withJointItems } from '../../src/core/aircraft/hardware/jointItems.ts'
import { createInProcessRunner } from '../../src/jobs/inProcess.ts'
import type { Runner } from '../../src/jobs/runner.ts'
import { createActions, type ActionDeps } from '../../src/state/actions/actions.ts'
import { createSoleClaims } from '../../src/state/storage/claims.ts'
import { createMemoryStorage } from '../../src/state/storage/memoryStorage.ts'
import { createAppStore } from '../../src/state/store/store.ts'
import type { IncomingFile } from '../../src/state/store/types.ts'
import { box } from './meshes.ts'
import { writeStlBinary } from './writeMesh.ts'

/**
 * A page without a page: the store, its actions, and a runner and a storage the test may replace.
 */
export async function startSession(deps: Partial<ActionDeps> = {}) {
  const session = beginSession(deps)
  await session.actions.restore()
  return session
}

/** The same before the last visit's frame is asked for. */
export function beginSession(deps: Partial<ActionDeps> = {}) {
  const store = createAppStore()
  store.setState({ addScrews: withJointItems })
  let ids = 0
  const storage = deps.storage ?? createMemoryStorage()
  const runner = deps.runner ?? createInProcessRunner()
  const actions = createActions(store, {
    demos: { load: () => Promise.reject(new Error('no demos in this test')) },
    now: () => Date.UTC(2027, 0, 2),
    newId: () => `id-${(ids += 1)}`,
    locale: 'en-GB',
    claims: createSoleClaims(),
    ...deps,
    runner,
    storage,
  })
  return { store, actions, storage, runner, state: () => store.getState() }
}

/** A block as a file of its own. */
export function boxFile(name: string, w: number, d: number, h: number): IncomingFile {
  return fileOf(name, writeStlBinary(box(w, d, h)))
}

export function fileOf(name: string, bytes: Uint8Array | string): IncomingFile {
  const content = typeof bytes === 'string' ? bytes : Uint8Array.from(bytes)
  return { name, blob: new Blob([content]) }
}

/** A runner that counts the jobs that reach it. */
export function counting(runner: Runner): Runner & { readonly kinds: string[] } {
  const kinds: string[] = []
  return {
    kinds,
    run(ask, options) {
      kinds.push(ask.kind)
      return runner.run(ask, options)
    },
    close: () => runner.close(),
  }
}

/** A runner whose analyses wait until the test lets them go; the other jobs are done at once. */
export function holding(runner: Runner) {
  const waiting: { readonly signal: AbortSignal | undefined; go(): void }[] = []
  const held: Runner = {
    async run(ask, options) {
      if (ask.kind === 'analyse') {
        await new Promise<void>((resolve) => {
          waiting.push({ signal: options?.signal, go: resolve })
          options?.signal?.addEventListener('abort', () => resolve())
        })
      }
      return runner.run(ask, options)
    },
    close: () => runner.close(),
  }
  return { runner: held, waiting }
}
