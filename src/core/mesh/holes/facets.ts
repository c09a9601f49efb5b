import type { Mesh } from '../../model/mesh.ts'
import { sortSides } from '../edges.ts'
import { unitNormals } from '../unitNormals.ts'

/**
 * No neighbour: an open edge, or one where the triangles do not simply pass from one to the next.
 */
export const ALONE = 0xffffffff

/** Each triangle's unit normal and area, and its neighbour across each side. */
export interface Facets {
  /** x, y, z per triangle, stride 3; zero where it has no area. */
  readonly normals: Float64Array
  /** In the mesh's own unit squared; one a triangle. */
  readonly areas: Float64Array
  /** Per side 3·triangle + k: the same side seen from the neighbour, or `ALONE`. */
  readonly across: Uint32Array
}

/** @param mesh faced outwards; see `orientMesh`. */
export function surveyFacets(mesh: Mesh): Facets {
  const { normals, areas } = unitNormals(mesh)
  const across = new Uint32Array(mesh.indices.length).fill(ALONE)
  const { starts, higher, sides } = sortSides(mesh)
  for (let vertex = 0; vertex + 1 < starts.length; vertex++) {
    const end = starts[vertex + 1]!
    for (let first = starts[vertex]!; first < end;) {
      let next = first + 1
      while (next < end && higher[next] === higher[first]) next++
      if (next - first === 2 && (sides[first]! & 1) !== (sides[first + 1]! & 1)) {
        across[sides[first]! >>> 1] = sides[first + 1]! >>> 1
        across[sides[first + 1]! >>> 1] = sides[first]! >>> 1
      }
      first = next
    }
  }
  return { normals, areas, across }
}
