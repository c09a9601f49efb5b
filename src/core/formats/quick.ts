import type { Bounds } from '../model/mesh.ts'
import { looksLikeStlBinary, presentTriangles, STL_START, STL_STRIDE } from './stlBinary.ts'

/** First numbers of a part, before its mesh is read; "mm" holds when the file's unit is the millimetre. */
export interface QuickMeasure {
  /** Never negative; bodies that overlap count twice and open meshes are not noticed. */
  readonly volumeMm3: number
  readonly areaMm2: number
  readonly boundsMm: Bounds
  readonly triangles: number
}

/**
 * Volume, area and bounds of a binary STL in one pass over its bytes, with nothing allocated.
 * Null for every other format, and where a coordinate is not finite.
 *
 * The volume is the sum of the tetrahedra between each triangle and the file's first corner, not the
 * origin, so it loses nothing on a part drawn far away.
 */
export function quickMeasure(bytes: Uint8Array): QuickMeasure | null {
  if (!looksLikeStlBinary(bytes)) return null
  const triangles = presentTriangles(bytes)
  if (triangles === 0) return null
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  const first = STL_START + 12
  const originX = view.getFloat32(first, true)
  const originY = view.getFloat32(first + 4, true)
  const originZ = view.getFloat32(first + 8, true)

  let sixVolumes = 0
  let twoAreas = 0
  let minX = 0
  let minY = 0
  let minZ = 0
  let maxX = 0
  let maxY = 0
  let maxZ = 0
  for (let t = 0, at = first; t < triangles; t++, at += STL_STRIDE) {
    const ax = view.getFloat32(at, true) - originX
    const ay = view.getFloat32(at + 4, true) - originY
    const az = view.getFloat32(at + 8, true) - originZ
    const bx = view.getFloat32(at + 12, true) - originX
    const by = view.getFloat32(at + 16, true) - originY
    const bz = view.getFloat32(at + 20, true) - originZ
    const cx = view.getFloat32(at + 24, true) - originX
    const cy = view.getFloat32(at + 28, true) - originY
    const cz = view.getFloat32(at + 32, true) - originZ
    const ux = bx - ax
    const uy = by - ay
    const uz = bz - az
    const vx = cx - ax
    const vy = cy - ay
    const vz = cz - az
    const nx = uy * vz - uz * vy
    const ny = uz * vx - ux * vz
    const nz = ux * vy - uy * vx
    sixVolumes += ax * nx + ay * ny + az * nz
    twoAreas += Math.sqrt(nx * nx + ny * ny + nz * nz)
    if (ax < minX) minX = ax
    if (bx < minX) minX = bx
    if (cx < minX) minX = cx
    if (ay < minY) minY = ay
    if (by < minY) minY = by
    if (cy < minY) minY = cy
    if (az < minZ) minZ = az
    if (bz < minZ) minZ = bz
    if (cz < minZ) minZ = cz
    if (ax > maxX) maxX = ax
    if (bx > maxX) maxX = bx
    if (cx > maxX) maxX = cx
    if (ay > maxY) maxY = ay
    if (by > maxY) maxY = by
    if (cy > maxY) maxY = cy
    if (az > maxZ) maxZ = az
    if (bz > maxZ) maxZ = bz
    if (cz > maxZ) maxZ = cz
  }
  if (!Number.isFinite(sixVolumes) || !Number.isFinite(twoAreas)) return null
  return {
    volumeMm3: Math.abs(sixVolumes) / 6,
    areaMm2: twoAreas / 2,
    boundsMm: {
      min: [minX + originX, minY + originY, minZ + originZ],
      max: [maxX + originX, maxY + originY, maxZ + originZ],
    },
    triangles,
  }
}
