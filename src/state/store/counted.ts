import type { Census } from '../../core/model/census.ts'
import type { PartRead } from '../../jobs/asks/partAsks.ts'
import { createLatest } from './latest.ts'
import type { Storage } from '../storage/storage.ts'

/** Censuses and measures already taken, by their keys: the latest in memory, more in storage. */
export interface Counted {
  census(key: string): Census | null
  read(key: string): PartRead | null
  /** Fetches from storage what memory lacks. Never rejects: what cannot be had is counted anew. */
  fetch(censusKey: string, readKey: string): Promise<void>
  keepCensus(key: string, census: Census): void
  keepRead(key: string, read: PartRead): void
}

/** A census is a few ten kilobytes, so these are a few megabytes. */
const KEPT = 300

export function createCounted(storage: Storage): Counted {
  const censuses = createLatest<Census>(KEPT)
  const reads = createLatest<PartRead>(KEPT)
  const ignore = () => undefined
  return {
    census: (key) => censuses.get(key) ?? null,
    read: (key) => reads.get(key) ?? null,
    async fetch(censusKey, readKey) {
      const [census, read] = await Promise.all([
        censuses.get(censusKey) ?? storage.loadCensus(censusKey).catch(() => null),
        reads.get(readKey) ?? storage.loadRead(readKey).catch(() => null),
      ])
      if (census !== null) censuses.set(censusKey, census)
      if (read !== null) reads.set(readKey, read)
    },
    keepCensus(key, census) {
      censuses.set(key, census)
      // Only a cache: when it cannot be stored the census is taken again at the next visit.
      storage.saveCensus(key, census).catch(ignore)
    },
    keepRead(key, read) {
      reads.set(key, read)
      storage.saveRead(key, read).catch(ignore)
    },
  }
}
