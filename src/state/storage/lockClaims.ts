import * as v from 'valibot'
import type { Claims } from './claims.ts'

/**
 * A page that is being reloaded lets go of its project a moment after the new one asks for it, ms.
 */
const RELOAD_MS = 400
/**
 * How long a tab that is asked for its project may take to write, before it is taken without
 * asking, ms.
 */
const YIELD_MS = 2000

const YieldSchema = v.object({ kind: v.literal('yield'), id: v.string() })

/**
 * Claims as the browser's locks: one that belongs to a tab goes with it, also when it crashes. The
 * tabs speak to each other only when one wants what another has. `scope` tells our locks from those
 * of other pages of this origin.
 */
export function createLockClaims(
  locks: LockManager,
  channel: BroadcastChannel,
  scope: string,
): Claims {
  const held = new Map<string, () => void>()
  const pageLock = `${scope} page`
  const lockOf = (id: string) => `${scope} project ${id}`
  let listener: (id: string) => Promise<void> = () => Promise.resolve()
  const closed = new AbortController()

  /** Resolves once it is known whether we have the lock, and keeps it from then on. */
  function grab(id: string, options: LockOptions): Promise<boolean> {
    return new Promise((resolve) => {
      let isOurs = false
      locks
        .request(lockOf(id), options, (lock) => {
          isOurs = lock !== null
          resolve(isOurs)
          return isOurs ? new Promise<void>((letGo) => held.set(id, letGo)) : undefined
        })
        // Either we waited in vain, or the lock was taken from us without asking.
        .catch(() => {
          if (isOurs && held.delete(id)) void listener(id)
        })
        .finally(() => resolve(false))
    })
  }

  function release(id: string): void {
    held.get(id)?.()
    held.delete(id)
  }

  async function hold(id: string): Promise<boolean> {
    if (held.has(id) || (await grab(id, { ifAvailable: true }))) return true
    return grab(id, { signal: AbortSignal.timeout(RELOAD_MS) })
  }

  channel.addEventListener('message', ({ data }: MessageEvent<unknown>) => {
    if (!v.is(YieldSchema, data) || !held.has(data.id)) return
    const { id } = data
    void listener(id).finally(() => release(id))
  })
  locks
    .request(
      pageLock,
      { mode: 'shared', signal: closed.signal },
      () =>
        new Promise<void>((resolve) => closed.signal.addEventListener('abort', () => resolve())),
    )
    .catch(() => undefined)

  return {
    hold,
    keepOnly(id) {
      for (const each of held.keys()) if (each !== id) release(each)
    },
    async takeOver(id) {
      if (held.has(id)) return
      channel.postMessage({ kind: 'yield', id })
      const isOurs = await grab(id, { signal: AbortSignal.timeout(YIELD_MS) })
      if (!isOurs) await grab(id, { steal: true })
    },
    async isElsewhere(id) {
      if (held.has(id)) return false
      const { held: all = [] } = await locks.query()
      return all.some((lock) => lock.name === lockOf(id))
    },
    async isAlone() {
      const { held: all = [] } = await locks.query()
      return all.filter((lock) => lock.name === pageLock).length <= 1
    },
    onTaken(next) {
      listener = next
    },
    close() {
      closed.abort()
      channel.close()
      for (const id of held.keys()) release(id)
    },
  }
}
