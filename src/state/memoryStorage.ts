import type { Census } from '../core/census.ts'
import type { Frame } from '../core/frame.ts'
import type { PartRead } from '../jobs/protocol.ts'
import type { Storage } from './storage.ts'

/** A storage that forgets when the page closes: for tests, and for browsers without one. */
export function createMemoryStorage(): Storage {
  let kept: Frame | null = null
  const meshes = new Map<string, Blob>()
  const censuses = new Map<string, Census>()
  const reads = new Map<string, PartRead>()
  return {
    loadFrame: () => Promise.resolve(kept),
    saveFrame(frame, blobs) {
      kept = frame
      for (const [hash, blob] of blobs) if (!meshes.has(hash)) meshes.set(hash, blob)
      return Promise.resolve()
    },
    loadMesh: (hash) => Promise.resolve(meshes.get(hash) ?? null),
    loadCensus: (key) => Promise.resolve(censuses.get(key) ?? null),
    saveCensus(key, census) {
      censuses.set(key, census)
      return Promise.resolve()
    },
    loadRead: (key) => Promise.resolve(reads.get(key) ?? null),
    saveRead(key, read) {
      reads.set(key, read)
      return Promise.resolve()
    },
    tidy: () => Promise.resolve(),
  }
}
