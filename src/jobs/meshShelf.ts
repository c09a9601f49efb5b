import { readMesh } from '../core/formats/read.ts'
import type { MeshTaking } from '../core/mesh/outwardMesh.ts'
import type { LengthUnit, ReadMesh } from '../core/model/mesh.ts'
import { unitToMm } from '../core/model/units.ts'
import { PreweighError } from '../core/model/problem.ts'
import { createFacing, type FaceMesh } from '../core/weighPart.ts'
import type { MeshSource } from './asks/fileAsks.ts'
import { SHELF_PLACES } from './shelfPlaces.ts'

/** Meshes read last, so that a changed recipe does not read its file anew. */
export interface MeshShelf {
  /** Throws PreweighError. `onBytes` is called when the file has to be read. */
  read(source: MeshSource, onBytes?: (bytes: Uint8Array) => void): Promise<ReadMesh>
  put(hash: string, mesh: ReadMesh): void
  /** Remembered as long as the mesh is kept. */
  readonly outward: FaceMesh
}

/**
 * @param places how many meshes are kept.
 * @param triangles how many they may have together; the last one is kept whatever it has.
 */
export function createMeshShelf(places = SHELF_PLACES, triangles = Infinity): MeshShelf {
  const kept = new Map<string, ReadMesh>()

  function put(hash: string, mesh: ReadMesh): void {
    kept.delete(hash)
    kept.set(hash, mesh)
    for (const oldest of kept.keys()) {
      if (kept.size === 1 || (kept.size <= places && trianglesIn(kept) <= triangles)) break
      kept.delete(oldest)
    }
  }

  return {
    put,
    outward: createFacing(),
    async read({ hash, name, blob }, onBytes) {
      const known = kept.get(hash)
      const mesh = known ?? (await fromBlob())
      put(hash, mesh)
      return mesh

      async function fromBlob(): Promise<ReadMesh> {
        const bytes = await readBytes(blob, name)
        onBytes?.(bytes)
        return readMesh(bytes, name)
      }
    },
  }
}

function trianglesIn(kept: ReadonlyMap<string, ReadMesh>): number {
  let count = 0
  for (const { mesh } of kept.values()) count += mesh.indices.length / 3
  return count
}

/**
 * The bytes of a file. Throws PreweighError `unreadable-file`: it may have been changed, moved or
 * deleted meanwhile.
 */
export async function readBytes(blob: Blob, name: string): Promise<Uint8Array<ArrayBuffer>> {
  try {
    return new Uint8Array(await blob.arrayBuffer())
  } catch {
    throw new PreweighError(
      'unreadable-file',
      `“${name}” cannot be read: it was changed, moved or deleted after it was dropped, ` +
        'or is too large for this browser.',
      'Drop the file again.',
    )
  }
}

/** How the mesh of `source` is taken in `unit`. */
export function takingOf({ keepsHairs = false }: MeshSource, unit: LengthUnit): MeshTaking {
  return { scaleToMm: unitToMm(unit), keepsHairs }
}
