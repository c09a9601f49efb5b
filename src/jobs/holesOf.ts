import { findPartHoles } from '../core/drill/findPartHoles.ts'
import type { PartHoles } from '../core/drill/types.ts'
import { meshInMm } from './meshInMm.ts'
import type { MeshShelf } from './meshShelf.ts'
import type { HolesAsk } from './asks/frameAsks.ts'

/** Finds the holes of parts; one whose mesh cannot be read is left out. */
export async function holesOf(
  { parts }: HolesAsk,
  shelf: MeshShelf,
): Promise<readonly PartHoles[]> {
  const found: PartHoles[] = []
  for (const { partId, source, unit } of parts) {
    try {
      found.push(findPartHoles(partId, await meshInMm(source, unit, shelf)))
    } catch {
      // It is told of where its layers are counted.
    }
  }
  return found
}
