import { openDB, type IDBPDatabase, type IDBPTransaction } from 'idb'
import type { Frame } from '../../core/model/frame.ts'
import { DATABASE_VERSION, upgradeDatabase, type Schema } from './databaseSchema.ts'
import { hashesIn } from './hashesIn.ts'
import { meshHashesOf } from './meshHashesOf.ts'
import { DAY_MS, isSpent, latestFirst, summaryOf } from '../store/projectSummary.ts'
import type { Storage } from './storage.ts'

/** What follows from meshes and settings alone, and is only kept to be had sooner. */
const COMPUTED = ['censuses', 'reads', 'answers'] as const
/** So many of each: a few ten kilobytes apiece. */
const KEPT_COMPUTED = 500
const SAVED_BETWEEN_TIDYINGS = 100

/**
 * On the disk, not just on its way there, before the page says “saved”: a power cut costs no more
 * than a crash.
 */
const DURABLE = { durability: 'strict' } as const

export interface IndexedDbOptions {
  /** What was computed by another build is not found. */
  readonly countedBuild: string
  readonly now?: () => number
}

type Database = IDBPDatabase<Schema>
type StoreName = 'frames' | 'projects' | 'settings' | 'meshes' | 'workshop'
type Writing = IDBPTransaction<Schema, StoreName[], 'readwrite'>

/** The browser's database. Opened at the first use, and again after the browser closed it. */
export function createIndexedDbStorage(
  name: string,
  { countedBuild, now = Date.now }: IndexedDbOptions,
): Storage & { close(): Promise<void> } {
  let opening: Promise<Database> | null = null
  let answersSaved = 0
  const inBuild = (key: string) => `${countedBuild}|${key}`

  function open(): Promise<Database> {
    opening ??= openDB<Schema>(name, DATABASE_VERSION, {
      upgrade(db, from, _to, tx) {
        // Half an upgrade would be worse than none.
        upgradeDatabase(db, from, tx, now()).catch(() => tx.abort())
      },
      // Another tab has a newer page and waits to upgrade.
      blocking: () => void close(),
      terminated() {
        opening = null
      },
    }).catch((error: unknown) => {
      opening = null
      throw error
    })
    return opening
  }

  async function close(): Promise<void> {
    const db = await opening?.catch(() => null)
    opening = null
    db?.close()
  }

  /** Runs `work` in one transaction: when it throws or gives null, nothing of it stays. */
  async function write<T>(
    stores: StoreName[],
    work: (tx: Writing) => Promise<T | null>,
  ): Promise<T | null> {
    const tx = (await open()).transaction(stores, 'readwrite', DURABLE)
    // Without a listener a transaction that fails would be reported as an error of its own.
    const done = tx.done.catch((error: unknown) => ({ error }))
    let result: T | null
    try {
      result = await work(tx)
    } catch (error) {
      abort(tx)
      const failed = await done
      // A full disk ends the transaction first; what fails inside it then is only the echo.
      throw failed?.error instanceof DOMException && failed.error.name === 'QuotaExceededError'
        ? failed.error
        : error
    }
    if (result === null) abort(tx)
    const failed = await done
    if (failed !== undefined && result !== null) throw failed.error
    return result
  }

  return {
    close,
    async loadProject(id) {
      const tx = (await open()).transaction(['frames', 'projects', 'settings'])
      const projects = tx.objectStore('projects')
      const wanted = id ?? (await tx.objectStore('settings').get('current')) ?? null
      let found = wanted === null ? undefined : await projects.get(wanted)
      if (id === null && (found === undefined || found.deletedAt !== null)) {
        const all = await projects.getAll()
        found = all.filter((each) => each.deletedAt === null).toSorted(latestFirst)[0]
      }
      if (found === undefined) return null
      const frame: unknown = await tx.objectStore('frames').get(found.id)
      return { frame, revision: found.revision }
    },
    saveFrame: ({ frame, meshes, massG, basedOn, open: isOpen }) =>
      write(['frames', 'projects', 'settings', 'meshes'], async (tx) => {
        const projects = tx.objectStore('projects')
        const stored = await projects.get(frame.id)
        if (stored !== undefined && stored.revision !== basedOn) return null
        const savedAt = now()
        const revision = (stored?.revision ?? 0) + 1
        const kept = tx.objectStore('meshes')
        await Promise.all([
          tx.objectStore('frames').put(frame, frame.id),
          projects.put({ ...summaryOf(frame, massG, savedAt), revision }, frame.id),
          isOpen ? tx.objectStore('settings').put(frame.id, 'current') : null,
          ...[...meshes].map(async ([hash, blob]) => {
            if ((await kept.getKey(hash)) === undefined) await kept.put({ blob, savedAt }, hash)
          }),
        ])
        return revision
      }),
    openProject: (id, basedOn) =>
      write(['projects', 'settings'], async (tx) => {
        const stored = await tx.objectStore('projects').get(id)
        if (stored === undefined || stored.revision !== basedOn) return null
        await tx.objectStore('settings').put(id, 'current')
        return stored.revision
      }),
    async listProjects() {
      const all = await (await open()).getAll('projects')
      return all.map(({ revision: _revision, ...summary }) => summary).toSorted(latestFirst)
    },
    renameProject: (id, wanted) =>
      write(['frames', 'projects'], async (tx) => {
        const stored = await tx.objectStore('projects').get(id)
        const frame = await tx.objectStore('frames').get(id)
        if (stored === undefined || frame === undefined) return null
        const revision = stored.revision + 1
        const changed = { ...stored, name: wanted, changedAt: now(), revision }
        await tx.objectStore('projects').put(changed, id)
        await tx.objectStore('frames').put({ ...frame, name: wanted }, id)
        return revision
      }),
    async setDeleted(id, deletedAt) {
      await patchSummary(id, { deletedAt })
    },
    async saveMass(id, massG) {
      await patchSummary(id, { massG })
    },
    async loadWorkshop() {
      return (await (await open()).get('workshop', 'current')) ?? null
    },
    async changeWorkshop(change) {
      const changed = await write(['workshop'], async (tx) => {
        const workshop = tx.objectStore('workshop')
        const next = change((await workshop.get('current')) ?? null)
        await workshop.put(next, 'current')
        return next
      })
      if (changed === null) throw new Error('The workshop was not written.')
      return changed
    },
    async loadMesh(hash) {
      return (await (await open()).get('meshes', hash))?.blob ?? null
    },
    async loadCensus(key) {
      return (await (await open()).get('censuses', inBuild(key)))?.value ?? null
    },
    async saveCensus(key, value) {
      await (await open()).put('censuses', { value, savedAt: now() }, inBuild(key))
    },
    async loadRead(key) {
      return (await (await open()).get('reads', inBuild(key)))?.value ?? null
    },
    async saveRead(key, value) {
      await (await open()).put('reads', { value, savedAt: now() }, inBuild(key))
    },
    async loadAnswer(key) {
      return (await (await open()).get('answers', inBuild(key)))?.value ?? null
    },
    async saveAnswer(key, value) {
      await (await open()).put('answers', { value, savedAt: now() }, inBuild(key))
      answersSaved += 1
      // Every rest of a drawing that is turned comes to one.
      if (answersSaved % SAVED_BETWEEN_TIDYINGS === 0) await dropOldest(await open(), 'answers')
    },
    async tidy(needed) {
      await write(['frames', 'projects', 'meshes'], (tx) => dropUnneeded(tx, needed, now()))
      const db = await open()
      for (const computed of COMPUTED) await dropOldest(db, computed)
    },
  }

  function patchSummary(
    id: string,
    patch: { readonly deletedAt: number | null } | { readonly massG: number | null },
  ): Promise<true | null> {
    return write(['projects'], async (tx): Promise<true> => {
      const stored = await tx.objectStore('projects').get(id)
      if (stored !== undefined) await tx.objectStore('projects').put({ ...stored, ...patch }, id)
      return true
    })
  }
}

function abort(tx: Writing): void {
  try {
    tx.abort()
  } catch {
    // It has ended already.
  }
}

async function dropUnneeded(tx: Writing, needed: Frame, now: number): Promise<true> {
  const hashes = new Set(meshHashesOf(needed))
  for (const project of await tx.objectStore('projects').getAll()) {
    if (project.id !== needed.id && isSpent(project, now)) {
      await tx.objectStore('projects').delete(project.id)
      await tx.objectStore('frames').delete(project.id)
    }
  }
  const frames: readonly unknown[] = await tx.objectStore('frames').getAll()
  for (const frame of frames) for (const hash of hashesIn(frame)) hashes.add(hash)
  const meshes = tx.objectStore('meshes')
  for (let at = await meshes.openCursor(); at !== null; at = await at.continue()) {
    if (!hashes.has(at.key) && at.value.savedAt < now - DAY_MS) await at.delete()
  }
  return true
}

async function dropOldest(db: Database, name: (typeof COMPUTED)[number]): Promise<void> {
  const tx = db.transaction(name, 'readwrite')
  let surplus = (await tx.store.count()) - KEPT_COMPUTED
  const oldest = tx.store.index('savedAt')
  for (let at = await oldest.openCursor(); at !== null && surplus > 0; at = await at.continue()) {
    await at.delete()
    surplus -= 1
  }
  await tx.done
}
