import type { Mesh } from '../../model/mesh.ts'
import { sortSides } from '../edges.ts'

/** No neighbour: an open edge, or one where the triangles do not simply pass from one to the next. */
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
  const { positions, indices } = mesh
  const triangles = indices.length / 3
  const normals = new Float64Array(indices.length)
  const areas = new Float64Array(triangles)
  for (let t = 0; t < triangles; t++) {
    const a = 3 * indices[3 * t]!
    const b = 3 * indices[3 * t + 1]!
    const c = 3 * indices[3 * t + 2]!
    const ux = positions[b]! - positions[a]!
    const uy = positions[b + 1]! - positions[a + 1]!
    const uz = positions[b + 2]! - positions[a + 2]!
    const vx = positions[c]! - positions[a]!
    const vy = positions[c + 1]! - positions[a + 1]!
    const vz = positions[c + 2]! - positions[a + 2]!
    const nx = uy * vz - uz * vy
    const ny = uz * vx - ux * vz
    const nz = ux * vy - uy * vx
    const twice = Math.sqrt(nx * nx + ny * ny + nz * nz)
    if (!(twice > 0)) continue
    areas[t] = twice / 2
    normals[3 * t] = nx / twice
    normals[3 * t + 1] = ny / twice
    normals[3 * t + 2] = nz / twice
  }
  const across = new Uint32Array(indices.length).fill(ALONE)
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
