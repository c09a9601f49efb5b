import * as v from 'valibot'
import type { Frame } from '../../core/model/frame.ts'
import { hashesIn } from './hashesIn.ts'
import type { Spare } from './spare.ts'
import type { Storage } from './storage.ts'

/**
 * A storage with a second copy of what it keeps, for the day the browser loses its database.
 * Chromium does: killed in the middle of a write, it goes on behind the torn record at the next
 * start, finds it at the start after that, and throws the whole database away (seen with its
 * “Reusing old log”; `tests/app/spare.test.ts` brings it about). The copy follows each change by a
 * moment and is asked only when the database is empty.
 */
export function withSpare(storage: Storage, spare: Spare): Storage & { settled(): Promise<void> } {
  /** Frames to copy, by project id. */
  const waiting = new Map<string, Frame>()
  let copying: Promise<void> | null = null
  let copyingWorkshop: Promise<void> = Promise.resolve()

  async function copyAll(): Promise<void> {
    for (;;) {
      const [frame] = waiting.values()
      if (frame === undefined) return
      waiting.delete(frame.id)
      // Best effort: the database has it.
      await spare.keep(frame, (hash) => storage.loadMesh(hash)).catch(() => undefined)
    }
  }

  function copy(frame: Frame): void {
    waiting.set(frame.id, frame)
    copying ??= copyAll().finally(() => {
      copying = null
    })
  }

  /** Puts what the copy has back into the database; gives how many projects that was. */
  async function bringBack(): Promise<number> {
    let count = 0
    for (const frame of await spare.frames().catch(() => [])) {
      if (!isFrameLike(frame)) continue
      const meshes = new Map<string, Blob>()
      for (const hash of hashesIn(frame)) {
        const mesh = await spare.mesh(hash).catch(() => null)
        if (mesh !== null) meshes.set(hash, mesh)
      }
      await storage.saveFrame({ frame, meshes, massG: null, basedOn: null, open: true })
      count += 1
    }
    return count
  }

  return {
    ...storage,
    async loadProject(id) {
      const found = await storage.loadProject(id)
      if (found !== null || id !== null || (await storage.listProjects()).length > 0) return found
      const broughtBack = await bringBack()
      const back = broughtBack === 0 ? null : await storage.loadProject(null)
      return back === null ? null : { ...back, broughtBack }
    },
    async saveFrame(save) {
      const revision = await storage.saveFrame(save)
      if (revision !== null) copy(save.frame)
      return revision
    },
    async loadWorkshop() {
      return (await storage.loadWorkshop()) ?? (await spare.workshop().catch(() => null))
    },
    async changeWorkshop(change) {
      // Asked for beforehand: the database waits for nothing else while it changes.
      const lost =
        (await storage.loadWorkshop()) === null ? await spare.workshop().catch(() => null) : null
      const workshop = await storage.changeWorkshop((kept) => change(kept ?? lost))
      copyingWorkshop = copyingWorkshop
        .then(() => spare.keepWorkshop(workshop))
        .catch(() => undefined)
      return workshop
    },
    async renameProject(id, name) {
      const revision = await storage.renameProject(id, name)
      const stored = revision === null ? null : await storage.loadProject(id)
      if (stored !== null && isFrameLike(stored.frame)) copy(stored.frame)
      return revision
    },
    async tidy(needed) {
      await storage.tidy(needed)
      const ids = new Set([needed.id])
      const hashes = new Set(hashesIn(needed))
      for (const { id } of await storage.listProjects()) {
        ids.add(id)
        const stored = await storage.loadProject(id)
        if (stored === null) continue
        for (const hash of hashesIn(stored.frame)) hashes.add(hash)
        if (isFrameLike(stored.frame) && !(await spare.has(id))) copy(stored.frame)
      }
      await copying
      await spare.keepOnly(ids, hashes)
    },
    async settled() {
      await copying
      await copyingWorkshop
    },
  }
}

const Shell = v.object({ id: v.string(), name: v.string(), parts: v.array(v.unknown()) })

/** Enough to be stored and listed; whether it can be opened is seen when it is. */
function isFrameLike(value: unknown): value is Frame {
  return v.is(Shell, value)
}
