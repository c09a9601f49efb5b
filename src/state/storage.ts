import type { Census } from '../core/census.ts'
import type { Frame } from '../core/frame.ts'
import type { PartRead } from '../jobs/protocol.ts'

/**
 * Where a frame lives between visits. Every method may reject: the browser can deny storage, run out of room
 * or lose it at any time. The caller then goes on in memory and says so.
 */
export interface Storage {
  /** The frame of the last visit as it was written, unchecked; null on the first visit. */
  loadFrame(): Promise<unknown>
  /** Writes the frame and those of its meshes that are not stored yet, all or nothing. */
  saveFrame(frame: Frame, meshes: ReadonlyMap<string, Blob>): Promise<void>
  loadMesh(hash: string): Promise<Blob | null>
  loadCensus(key: string): Promise<Census | null>
  saveCensus(key: string, census: Census): Promise<void>
  loadRead(key: string): Promise<PartRead | null>
  saveRead(key: string, read: PartRead): Promise<void>
  /** Throws out meshes no frame has needed for a day and all but the latest censuses. */
  tidy(frame: Frame): Promise<void>
}
