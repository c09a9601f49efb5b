import type { MeshSource, Rough } from '../../jobs/asks/fileAsks.ts'
import type { Storage } from './storage.ts'

/** The mesh files of this visit by content, and what is known of each from the first look. */
export interface Meshes {
  add(source: MeshSource, raw: Rough | null): void
  /** Volume and area with one file unit taken as one millimetre. */
  rawOf(hash: string): Rough | null
  /** Every mesh held here of those hashes. */
  held(hashes: Iterable<string>): ReadonlyMap<string, Blob>
  /**
   * The mesh, from storage if this visit has not seen it; null when it is nowhere. `name` is for
   * messages.
   */
  find(hash: string, name: string): Promise<MeshSource | null>
  /** Drops a mesh whose file cannot be read any more, so that the next `find` looks in storage. */
  forget(hash: string): void
}

export function createMeshes(storage: Storage): Meshes {
  const sources = new Map<string, MeshSource>()
  const raws = new Map<string, Rough>()
  return {
    add(source, raw) {
      sources.set(source.hash, source)
      if (raw !== null) raws.set(source.hash, raw)
    },
    rawOf: (hash) => raws.get(hash) ?? null,
    held(hashes) {
      const found = new Map<string, Blob>()
      for (const hash of hashes) {
        const source = sources.get(hash)
        if (source !== undefined) found.set(hash, source.blob)
      }
      return found
    },
    async find(hash, name) {
      const here = sources.get(hash)
      if (here !== undefined) return { ...here, name }
      const blob = await storage.loadMesh(hash).catch(() => null)
      if (blob === null) return null
      const source = { hash, name, blob }
      sources.set(hash, source)
      return source
    },
    forget(hash) {
      sources.delete(hash)
    },
  }
}
