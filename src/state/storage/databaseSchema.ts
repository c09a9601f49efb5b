import type { DBSchema, IDBPDatabase, IDBPTransaction, StoreNames } from 'idb'
import type { Census } from '../../core/model/census.ts'
import type { Frame } from '../../core/model/frame.ts'
import type { PartRead } from '../../jobs/asks/partAsks.ts'
import type { ProjectSummary } from '../store/types.ts'
import type { Workshop } from '../store/workshop.ts'

/*
 * The database, version by version. A version, once released, is never changed: a visitor may come back from any of
 * them, and each upgrade runs in the one transaction that opens the database, so one that fails leaves it as it was.
 *
 *   1  one frame, under the key `current`; meshes, censuses and measures
 *   2  many projects: each frame under its id, what the list shows of it in `projects`, the one to open in `settings`
 *   3  what is the builder's and no frame's, in `workshop`
 *   4  what workers drew, cut and reckoned, in `answers`
 */
export const DATABASE_VERSION = 4

export interface Schema extends DBSchema {
  /** By project id. As written, but maybe by another version of the page: check before use. */
  frames: { key: string; value: Frame }
  projects: { key: string; value: ProjectSummary & { readonly revision: number } }
  settings: { key: 'current'; value: string }
  /** As written, but maybe by another version of the page: check before use. */
  workshop: { key: 'current'; value: Workshop }
  /** By SHA-256; projects share them. */
  meshes: { key: string; value: { readonly blob: Blob; readonly savedAt: number } }
  censuses: { key: string; value: Kept<Census>; indexes: { savedAt: number } }
  reads: { key: string; value: Kept<PartRead>; indexes: { savedAt: number } }
  answers: { key: string; value: Kept<unknown>; indexes: { savedAt: number } }
}

interface Kept<T> {
  readonly value: T
  readonly savedAt: number
}

/** Key of the only frame in version 1. */
const ONLY_FRAME = 'current'

/** Brings a database of any earlier version (0: none) to the present one. */
export async function upgradeDatabase(
  db: IDBPDatabase<Schema>,
  from: number,
  tx: IDBPTransaction<Schema, StoreNames<Schema>[], 'versionchange'>,
  now: number,
): Promise<void> {
  if (from < 1) {
    db.createObjectStore('frames')
    db.createObjectStore('meshes')
    db.createObjectStore('censuses').createIndex('savedAt', 'savedAt')
    db.createObjectStore('reads').createIndex('savedAt', 'savedAt')
  }
  if (from < 2) {
    db.createObjectStore('projects')
    db.createObjectStore('settings')
    const frames = tx.objectStore('frames')
    const only = await frames.get(ONLY_FRAME)
    if (only !== undefined) {
      const summary = { ...unsureSummary(only), changedAt: now }
      await frames.delete(ONLY_FRAME)
      await frames.put(only, summary.id)
      await tx.objectStore('projects').put({ ...summary, revision: 1 }, summary.id)
      await tx.objectStore('settings').put(summary.id, 'current')
    }
  }
  if (from < 3) db.createObjectStore('workshop')
  if (from < 4) db.createObjectStore('answers').createIndex('savedAt', 'savedAt')
}

/** Of a frame that may be damaged; whether it can be opened is seen when it is. */
function unsureSummary(frame: unknown): ProjectSummary {
  const { id, name, parts } = frame as Readonly<Record<string, unknown>>
  return {
    id: typeof id === 'string' && id !== '' ? id : ONLY_FRAME,
    name: typeof name === 'string' ? name : 'Frame of an earlier visit',
    partCount: Array.isArray(parts) ? parts.length : 0,
    massG: null,
    changedAt: 0,
    deletedAt: null,
  }
}
