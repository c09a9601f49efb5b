import type { Bounds } from '../model/mesh.ts'
import { looksLikeStlBinary, presentTriangles, STL_START, STL_STRIDE } from './stlBinary.ts'

/**
 * First numbers of a part, before its mesh is read; "mm" holds when the file's unit is the
 * millimetre.
 */
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
 * The volume is the sum of the tetrahedra between each triangle and the file's first corner, not
 * the origin, so it loses nothing on a part drawn far away.
 */
export function quickMeasure(bytes: Uint8Array): QuickMeasure | null {
  if (!looksLikeStlBinary(bytes)) return null
  const triangles = presentTriangles(bytes)
  if (triangles === 0) return null
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  const first = STL_START + 12
  for (let k = 0; k < 3; k++) origin[k] = view.getFloat32(first + 4 * k, true)
  sums.fill(0)
  for (let t = 0; t < triangles; t += BLOCK) {
    const count = Math.min(BLOCK, triangles - t)
    addTriangles(view, first + t * STL_STRIDE, count)
  }
  const [sixVolumes, twoAreas, ...reach] = sums
  if (!Number.isFinite(sixVolumes) || !Number.isFinite(twoAreas)) return null
  const at = (k: number): number => reach[k]! + origin[k % 3]!
  return {
    volumeMm3: Math.abs(sixVolumes!) / 6,
    areaMm2: twoAreas! / 2,
    boundsMm: { min: [at(0), at(1), at(2)], max: [at(3), at(4), at(5)] },
    triangles,
  }
}

/**
 * Triangles summed by one call. A loop over a whole file in one call is compiled while it runs, and
 * thrown away at its end, time and again: 80 to 120 ms for a million triangles instead of 20.
 */
const BLOCK = 1024

/** The first corner. */
const origin = new Float64Array(3)
/** Six times the volume, twice the area, least and greatest x, y, z from the origin. */
const sums = new Float64Array(8)

/** Adds so many triangles to the sums; the first one's corners lie at byte `first`. */
function addTriangles(view: DataView, first: number, count: number): void {
  const originX = origin[0]!
  const originY = origin[1]!
  const originZ = origin[2]!
  let sixVolumes = sums[0]!
  let twoAreas = sums[1]!
  let minX = sums[2]!
  let minY = sums[3]!
  let minZ = sums[4]!
  let maxX = sums[5]!
  let maxY = sums[6]!
  let maxZ = sums[7]!
  for (let t = 0, at = first; t < count; t++, at += STL_STRIDE) {
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
  sums[0] = sixVolumes
  sums[1] = twoAreas
  sums[2] = minX
  sums[3] = minY
  sums[4] = minZ
  sums[5] = maxX
  sums[6] = maxY
  sums[7] = maxZ
}
