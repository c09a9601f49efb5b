import type { Mesh } from '../model/mesh.ts'
import { findBodies, type Bodies } from './bodies.ts'
import { sumBodies, type BodySums } from './volume.ts'

/**
 * A mesh taken apart into bodies, each summed up: what facing it and measuring it both start from,
 * and most of their time.
 */
export interface Apart {
  readonly bodies: Bodies
  readonly sums: BodySums
}

/** Linear in the triangles for all meshes but soups; see `measureMesh` for times. */
export function takeApart(mesh: Mesh): Apart {
  const bodies = findBodies(mesh)
  return { bodies, sums: sumBodies(mesh, bodies) }
}
