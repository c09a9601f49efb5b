import { openDB, type DBSchema, type IDBPDatabase } from 'idb'
import type { Census } from '../core/census.ts'
import type { Frame } from '../core/frame.ts'
import type { PartRead } from '../jobs/protocol.ts'
import type { Storage } from './storage.ts'

const VERSION = 1
/** The frame the page opens with. */
const CURRENT = 'current'
const DAY_MS = 24 * 3600 * 1000
/** Censuses and measures kept: a few ten kilobytes each. */
const KEPT_FACTS = 500

interface Schema extends DBSchema {
  frames: { key: string; value: Frame }
  meshes: { key: string; value: { readonly blob: Blob; readonly savedAt: number } }
  censuses: { key: string; value: Kept<Census>; indexes: { savedAt: number } }
  reads: { key: string; value: Kept<PartRead>; indexes: { savedAt: number } }
}

interface Kept<T> {
  readonly value: T
  readonly savedAt: number
}

export interface IndexedDbOptions {
  /** Censuses and measures kept under another build are not found. */
  readonly factsBuild: string
  readonly now?: () => number
}

/** The browser's database. Opened at the first use, and again after the browser closed it. */
export function createIndexedDbStorage(
  name: string,
  { factsBuild, now = Date.now }: IndexedDbOptions,
): Storage & { close(): Promise<void> } {
  let opening: Promise<IDBPDatabase<Schema>> | null = null
  const inBuild = (key: string) => `${factsBuild}|${key}`

  function open(): Promise<IDBPDatabase<Schema>> {
    opening ??= openDB<Schema>(name, VERSION, {
      upgrade(db) {
        db.createObjectStore('frames')
        db.createObjectStore('meshes')
        db.createObjectStore('censuses').createIndex('savedAt', 'savedAt')
        db.createObjectStore('reads').createIndex('savedAt', 'savedAt')
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

  return {
    close,
    async loadFrame() {
      return (await (await open()).get('frames', CURRENT)) ?? null
    },
    async saveFrame(frame, meshes) {
      const tx = (await open()).transaction(['frames', 'meshes'], 'readwrite')
      const store = tx.objectStore('meshes')
      const savedAt = now()
      const writes = [...meshes].map(async ([hash, blob]) => {
        if ((await store.getKey(hash)) === undefined) await store.put({ blob, savedAt }, hash)
      })
      await Promise.all([tx.objectStore('frames').put(frame, CURRENT), ...writes, tx.done])
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
    async tidy(frame) {
      const db = await open()
      await dropMeshes(db, new Set(frame.parts.map((part) => part.meshHash)), now() - DAY_MS)
      await dropOldest(db, 'censuses')
      await dropOldest(db, 'reads')
    },
  }
}

/** Only day-old ones: another tab may still need what this tab's frame does not. */
async function dropMeshes(
  db: IDBPDatabase<Schema>,
  needed: ReadonlySet<string>,
  before: number,
): Promise<void> {
  const tx = db.transaction('meshes', 'readwrite')
  for (let at = await tx.store.openCursor(); at !== null; at = await at.continue()) {
    if (!needed.has(at.key) && at.value.savedAt < before) await at.delete()
  }
  await tx.done
}

async function dropOldest(db: IDBPDatabase<Schema>, name: 'censuses' | 'reads'): Promise<void> {
  const tx = db.transaction(name, 'readwrite')
  let surplus = (await tx.store.count()) - KEPT_FACTS
  const oldest = tx.store.index('savedAt')
  for (let at = await oldest.openCursor(); at !== null && surplus > 0; at = await at.continue()) {
    await at.delete()
    surplus -= 1
  }
  await tx.done
}
