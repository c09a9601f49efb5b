import type { Mesh, Vec3 } from '../../model/mesh.ts'
import type { Lump, Six } from './lump.ts'
import { NO_LUMP } from './lump.ts'

/** Where the inside and the surface of a mesh lie: all that balance needs of it, twenty numbers. */
export interface PartMoments {
  /** Of the enclosed volume, mm³. */
  readonly volume: Lump
  /** Of the surface, mm². */
  readonly surface: Lump
}

/**
 * Exact integrals over a closed mesh and over its surface, lengths multiplied by `scaleToMm`, in
 * the mesh's own axes.
 *
 * Volume: the divergence theorem as a sum of tetrahedra on one vertex, of which ∫ r rᵀ = V/20 (s sᵀ
 * + Σ v vᵀ), s = Σ v over the corners; surface: triangles, A/12 (s sᵀ + Σ v vᵀ) (moments of a
 * simplex, e.g. Tonon, J. Math. Stat. 1, 2004, 8–11). Sums start at a vertex of the mesh, so that
 * distance from the origin costs no digits. A mesh that is inside out gives the same; bodies that
 * overlap count twice, and an open mesh is only as good as its gaps are small.
 */
export function partMoments(mesh: Mesh, scaleToMm: number): PartMoments {
  const { positions, indices } = mesh
  const corner = 3 * (indices[0] ?? 0)
  const origin: Vec3 = [
    positions[corner] ?? 0,
    positions[corner + 1] ?? 0,
    positions[corner + 2] ?? 0,
  ]
  const volume = new Float64Array(10)
  const surface = new Float64Array(10)
  const v = new Float64Array(9)
  for (let t = 0; t + 2 < indices.length; t += 3) {
    for (let k = 0; k < 9; k++) {
      const from = 3 * (indices[t + Math.floor(k / 3)] ?? 0) + (k % 3)
      v[k] = ((positions[from] ?? 0) - (origin[k % 3] ?? 0)) * scaleToMm
    }
    addTriangle(v, volume, surface)
  }
  const home: Vec3 = [origin[0] * scaleToMm, origin[1] * scaleToMm, origin[2] * scaleToMm]
  return { volume: lumpOf(volume, home), surface: lumpOf(surface, home) }
}

/**
 * Adds one triangle (and its tetrahedron on the origin) to sums of 1, x, y, z, xx, yy, zz, xy, yz,
 * zx.
 */
function addTriangle(v: Float64Array, volume: Float64Array, surface: Float64Array): void {
  const [ax = 0, ay = 0, az = 0, bx = 0, by = 0, bz = 0, cx = 0, cy = 0, cz = 0] = v
  const nx = (by - ay) * (cz - az) - (bz - az) * (cy - ay)
  const ny = (bz - az) * (cx - ax) - (bx - ax) * (cz - az)
  const nz = (bx - ax) * (cy - ay) - (by - ay) * (cx - ax)
  const sixth = (ax * nx + ay * ny + az * nz) / 6
  const area = Math.sqrt(nx * nx + ny * ny + nz * nz) / 2
  const sx = ax + bx + cx
  const sy = ay + by + cy
  const sz = az + bz + cz
  const add = (sums: Float64Array, amount: number, quarter: number, twentieth: number): void => {
    sums[0] = (sums[0] ?? 0) + amount
    sums[1] = (sums[1] ?? 0) + quarter * sx
    sums[2] = (sums[2] ?? 0) + quarter * sy
    sums[3] = (sums[3] ?? 0) + quarter * sz
    sums[4] = (sums[4] ?? 0) + twentieth * (sx * sx + ax * ax + bx * bx + cx * cx)
    sums[5] = (sums[5] ?? 0) + twentieth * (sy * sy + ay * ay + by * by + cy * cy)
    sums[6] = (sums[6] ?? 0) + twentieth * (sz * sz + az * az + bz * bz + cz * cz)
    sums[7] = (sums[7] ?? 0) + twentieth * (sx * sy + ax * ay + bx * by + cx * cy)
    sums[8] = (sums[8] ?? 0) + twentieth * (sy * sz + ay * az + by * bz + cy * cz)
    sums[9] = (sums[9] ?? 0) + twentieth * (sz * sx + az * ax + bz * bx + cz * cx)
  }
  // The tetrahedron's fourth corner is the origin and adds nothing to the sums over corners.
  add(volume, sixth, sixth / 4, sixth / 20)
  add(surface, area, area / 3, area / 12)
}

/** From sums about `home` to a lump about its own centre. */
function lumpOf(sums: Float64Array, home: Vec3): Lump {
  const [amount = 0, x = 0, y = 0, z = 0, xx = 0, yy = 0, zz = 0, xy = 0, yz = 0, zx = 0] = sums
  if (amount === 0) return { ...NO_LUMP, centreMm: home }
  const sign = Math.sign(amount)
  const [mx, my, mz] = [x / amount, y / amount, z / amount]
  const second: Six = [
    sign * (xx - x * mx),
    sign * (yy - y * my),
    sign * (zz - z * mz),
    sign * (xy - x * my),
    sign * (yz - y * mz),
    sign * (zx - z * mx),
  ]
  return {
    amount: Math.abs(amount),
    centreMm: [home[0] + mx, home[1] + my, home[2] + mz],
    second,
  }
}
