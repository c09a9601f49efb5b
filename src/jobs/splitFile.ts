import { writeStl } from '../core/formats/writeStl.ts'
import { measureMesh } from '../core/geometry/measure.ts'
import { cleanMesh } from '../core/geometry/split/cleanMesh.ts'
import { splitPlate } from '../core/geometry/split/splitPlate.ts'
import type { Mesh } from '../core/mesh.ts'
import { hashBytes } from './hash.ts'
import type { MeshShelf } from './meshShelf.ts'
import type { SplitAnswer, SplitAsk, SplitPiece } from './protocol.ts'

/** Makes new files of a mesh's parts, or of the mesh without its scraps. They keep the file's unit and place. */
export async function splitFile({ source, how }: SplitAsk, shelf: MeshShelf): Promise<SplitAnswer> {
  const { mesh } = await shelf.take(source)
  const stem = source.name.replace(/\.[^.]+$/, '')
  if (how === 'clean') {
    const clean = cleanMesh(mesh)
    const piece = await pieceOf(clean, `${stem} (cleaned).stl`, 1, 0)
    return { pieces: [piece], leftOut: (mesh.indices.length - clean.indices.length) / 3 }
  }
  const { groups, leftOut } = splitPlate(mesh)
  const pieces = await Promise.all(
    groups.map((group, i) =>
      pieceOf(group.mesh, `${stem} (${i + 1}).stl`, group.count, group.mirrored),
    ),
  )
  return { pieces, leftOut }
}

async function pieceOf(
  mesh: Mesh,
  name: string,
  count: number,
  mirrored: number,
): Promise<SplitPiece> {
  const bytes = writeStl(mesh)
  const { volumeMm3, areaMm2 } = measureMesh(mesh, 1)
  return {
    source: { hash: await hashBytes(bytes), name, blob: new Blob([bytes]) },
    raw: { volumeMm3, areaMm2 },
    count,
    mirrored,
  }
}
