import { onceAMesh } from '../mesh/onceAMesh.ts'
import { findNecks } from '../mesh/holes/findNecks.ts'
import { wallRound } from '../mesh/holes/wallRound.ts'
import { wholeHoles } from '../mesh/holes/wholeHoles.ts'
import type { Mesh } from '../model/mesh.ts'
import type { PartHoles } from './types.ts'

const holesOf = onceAMesh((mesh): Omit<PartHoles, 'partId'> => ({
  holes: wholeHoles(mesh).map((hole) => ({ ...hole, wallMm: wallRound(mesh, hole) })),
  necks: findNecks(mesh),
}))

/** @param mesh in mm, faced outwards, in the part's own axes. */
export function findPartHoles(partId: string, mesh: Mesh): PartHoles {
  return { partId, ...holesOf(mesh) }
}
