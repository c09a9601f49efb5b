import type { Mesh } from '../model/mesh.ts'

/**
 * Each triangle's unit normal (x, y, z, stride 3) and area, as its corners run; zeros for one
 * without area.
 */
export function unitNormals({ positions, indices }: Pick<Mesh, 'positions' | 'indices'>): {
  readonly normals: Float64Array
  /** In the mesh's own unit squared. */
  readonly areas: Float64Array
} {
  const triangles = Math.floor(indices.length / 3)
  const normals = new Float64Array(3 * triangles)
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
  return { normals, areas }
}
