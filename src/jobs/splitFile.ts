import { writeStl } from '../core/formats/writeStl.ts'
import { measureMesh } from '../core/mesh/measure.ts'
import { shownMesh } from '../core/mesh/outwardMesh.ts'
import { cleanMesh } from '../core/mesh/split/cleanMesh.ts'
import { splitItems } from '../core/mesh/split/splitItems.ts'
import { splitPlate } from '../core/mesh/split/splitPlate.ts'
import type { PlateGroup } from '../core/mesh/split/splitPlate.ts'
import { hashBytes } from './hash.ts'
import { takingOf, type MeshShelf } from './meshShelf.ts'
import type { SplitAnswer, SplitAsk, SplitPiece } from './asks/fileAsks.ts'

/**
 * Makes new files of a mesh's parts, or of the mesh without its scraps. They keep the file's unit
 * and place.
 */
export async function splitFile(
  { source, unit, how }: SplitAsk,
  shelf: MeshShelf,
): Promise<SplitAnswer> {
  const read = await shelf.read(source)
  const mesh = shownMesh(read.mesh, takingOf(source, unit))
  const stem = source.name.replace(/\.[^.]+$/, '')
  if (how === 'clean') {
    const clean = cleanMesh(mesh)
    const piece = await pieceOf(`${stem} (cleaned).stl`, { mesh: clean, count: 1, mirrored: 0 })
    return { pieces: [piece], leftOut: (mesh.indices.length - clean.indices.length) / 3 }
  }
  const { groups, leftOut } = splitItems(read) ?? splitPlate(mesh)
  const pieces = await Promise.all(
    groups.map((group, i) => pieceOf(`${stem} (${i + 1}).stl`, group)),
  )
  return { pieces, leftOut }
}

async function pieceOf(
  fileName: string,
  { mesh, count, mirrored, places, name }: Omit<PlateGroup, 'shape'>,
): Promise<SplitPiece> {
  const bytes = writeStl(mesh)
  const { volumeMm3, areaMm2 } = measureMesh(mesh, 1)
  return {
    source: { hash: await hashBytes(bytes), name: fileName, blob: new Blob([bytes]) },
    raw: { volumeMm3, areaMm2 },
    count,
    mirrored,
    ...(places === undefined ? {} : { places }),
    ...(name === undefined ? {} : { name }),
  }
}
