import { inMm } from '../core/mesh/inMm.ts'
import type { LengthUnit, Mesh } from '../core/model/mesh.ts'
import { takingOf, type MeshShelf } from './meshShelf.ts'
import type { MeshSource } from './asks/fileAsks.ts'

/** In mm and faced outwards, in the axes it was drawn in. */
export async function meshInMm(
  source: MeshSource,
  unit: LengthUnit,
  shelf: MeshShelf,
): Promise<Mesh> {
  return inMm(shelf.outward(await shelf.read(source), takingOf(source, unit)), unit)
}
