import { findHoles, type Hole } from '../core/mesh/holes/findHoles.ts'
import type { Mesh, Vec3 } from '../core/model/mesh.ts'

/** One end of a bore that a mesh was found to have, in the mesh's own coordinates and unit. */
export interface Mouth {
  readonly bore: Hole
  /** On the bore's axis, where it ends. */
  readonly at: Vec3
}

/**
 * Of all ends of a mesh's bores the one nearest to a point: a drawing only has to point at what its
 * mesh tells.
 */
export function mouthNear(mesh: Mesh): (point: Vec3) => Mouth {
  const mouths = findHoles(mesh).flatMap((bore) =>
    [-0.5, 0.5].map((share): Mouth => ({ bore, at: along(bore, share * bore.depth) })),
  )
  const first = mouths[0]
  return (point) => {
    if (first === undefined) throw new Error('The mesh has no bore.')
    return mouths.reduce(
      (best, mouth) => (distance(mouth.at, point) < distance(best.at, point) ? mouth : best),
      first,
    )
  }
}

function along({ centre, axis }: Hole, by: number): Vec3 {
  return [centre[0] + by * axis[0], centre[1] + by * axis[1], centre[2] + by * axis[2]]
}

function distance(a: Vec3, b: Vec3): number {
  return Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2])
}
