import type { Bounds, Mesh } from '../model/mesh.ts'
import { NO_BODY, type Bodies } from './bodies.ts'

/**
 * Sums per body, in the mesh's own unit. Every array has one entry a body unless it says otherwise.
 */
export interface BodySums {
  /**
   * Signed: positive when the body, facing like its first triangle, faces outwards. Gaps are closed
   * by flat caps.
   */
  readonly volume: Float64Array
  readonly area: Float64Array
  /** Area of the triangles that face against the first one in the file. */
  readonly turnedArea: Float64Array
  readonly triangles: Uint32Array
  readonly turnedTriangles: Uint32Array
  /** Triangles with another one back to back on the same vertices. */
  readonly backedTriangles: Uint32Array
  /** Six per body: lowest x, y, z, highest x, y, z. */
  readonly bounds: Float64Array
  /** Three triangles per body to try points of: first, largest, last. */
  readonly samples: Uint32Array
  /** Triangles (of no body too) whose corners lie on one line. */
  readonly slivers: number
}

/**
 * Flat as far as single precision can tell: at a coordinate of 50 mm a 32-bit float steps by 4e-6
 * mm, so a 50 mm long triangle drawn on a straight line may still be some 1e-7 of its length high.
 */
const FLAT = 1e-7

/**
 * Volume (divergence theorem: a sum of tetrahedra on a point of the body itself, so distance from
 * the origin costs no digits) and area of every body, each summed with Neumaier's compensation (A.
 * Neumaier, ZAMM 54, 1974, 39–51).
 */
export function sumBodies(mesh: Mesh, bodies: Bodies): BodySums {
  const { positions, indices } = mesh
  const { count, bodyOf, turned } = bodies
  const volume = new Float64Array(count)
  const volumeRest = new Float64Array(count)
  const area = new Float64Array(count)
  const areaRest = new Float64Array(count)
  const turnedArea = new Float64Array(count)
  const triangles = new Uint32Array(count)
  const turnedTriangles = new Uint32Array(count)
  const backedTriangles = new Uint32Array(count)
  const largest = new Float64Array(count)
  const samples = new Uint32Array(3 * count)
  const bounds = new Float64Array(6 * count)
  const origins = new Float64Array(3 * count)
  let slivers = 0

  for (let t = 0; t < bodyOf.length; t++) {
    const body = bodyOf[t]!
    if (body === NO_BODY) continue
    const a = 3 * indices[3 * t]!
    const b = 3 * indices[3 * t + 1]!
    const c = 3 * indices[3 * t + 2]!
    if (triangles[body] === 0) startBody(positions, a, body, t)
    triangles[body]!++
    const ox = origins[3 * body]!
    const oy = origins[3 * body + 1]!
    const oz = origins[3 * body + 2]!
    const ax = positions[a]! - ox
    const ay = positions[a + 1]! - oy
    const az = positions[a + 2]! - oz
    const bx = positions[b]! - ox
    const by = positions[b + 1]! - oy
    const bz = positions[b + 2]! - oz
    const cx = positions[c]! - ox
    const cy = positions[c + 1]! - oy
    const cz = positions[c + 2]! - oz
    const ux = bx - ax
    const uy = by - ay
    const uz = bz - az
    const vx = cx - ax
    const vy = cy - ay
    const vz = cz - az
    const nx = uy * vz - uz * vy
    const ny = uz * vx - ux * vz
    const nz = ux * vy - uy * vx

    const sixth = (ax * nx + ay * ny + az * nz) / 6
    addTo(volume, volumeRest, body, turned[t] === 1 ? -sixth : sixth)
    const size = Math.sqrt(nx * nx + ny * ny + nz * nz) / 2
    addTo(area, areaRest, body, size)
    if (turned[t] === 1) {
      turnedArea[body]! += size
      turnedTriangles[body]!++
    }
    backedTriangles[body]! += bodies.backed[t]!

    const wx = vx - ux
    const wy = vy - uy
    const wz = vz - uz
    const longest = Math.max(
      ux * ux + uy * uy + uz * uz,
      vx * vx + vy * vy + vz * vz,
      wx * wx + wy * wy + wz * wz,
    )
    if (2 * size <= FLAT * longest) slivers++
    if (size > largest[body]!) {
      largest[body] = size
      samples[3 * body + 1] = t
    }
    samples[3 * body + 2] = t
    stretch(bounds, 6 * body, positions, a)
    stretch(bounds, 6 * body, positions, b)
    stretch(bounds, 6 * body, positions, c)
  }
  closeGaps(mesh, bodies, origins, (body, sixth) => addTo(volume, volumeRest, body, sixth))
  for (let body = 0; body < count; body++) {
    volume[body]! += volumeRest[body]!
    area[body]! += areaRest[body]!
  }
  return {
    volume,
    area,
    turnedArea,
    triangles,
    turnedTriangles,
    backedTriangles,
    bounds,
    samples,
    slivers,
  }

  function startBody(from: Mesh['positions'], corner: number, body: number, t: number) {
    samples[3 * body] = t
    samples[3 * body + 1] = t
    for (let k = 0; k < 3; k++) {
      origins[3 * body + k] = from[corner + k]!
      bounds[6 * body + k] = Infinity
      bounds[6 * body + 3 + k] = -Infinity
    }
  }
}

function addTo(sums: Float64Array, rests: Float64Array, at: number, value: number): void {
  const before = sums[at]!
  const after = before + value
  rests[at]! +=
    Math.abs(before) >= Math.abs(value) ? before - after + value : value - after + before
  sums[at] = after
}

function stretch(bounds: Float64Array, at: number, from: Mesh['positions'], corner: number): void {
  const x = from[corner]!
  const y = from[corner + 1]!
  const z = from[corner + 2]!
  if (x < bounds[at]!) bounds[at] = x
  if (y < bounds[at + 1]!) bounds[at + 1] = y
  if (z < bounds[at + 2]!) bounds[at + 2] = z
  if (x > bounds[at + 3]!) bounds[at + 3] = x
  if (y > bounds[at + 4]!) bounds[at + 4] = y
  if (z > bounds[at + 5]!) bounds[at + 5] = z
}

/**
 * Closes every gap by a fan of triangles from the middle of its rim. A flat gap is so closed flat,
 * and the volume of an open body no longer depends on where the origin is. `add` receives the
 * signed volume of each fan triangle's tetrahedron.
 */
function closeGaps(
  mesh: Mesh,
  bodies: Bodies,
  origins: Float64Array,
  add: (body: number, sixth: number) => void,
): void {
  const { positions, indices } = mesh
  const { loose, bodyOf, turned } = bodies
  if (loose.length === 0) return
  const rims = nameRims(mesh, loose)
  const middles = new Float64Array(3 * rims.count)
  const corners = new Uint32Array(rims.count)
  for (const side of loose) {
    const from = indices[side]!
    const rim = rims.rimOf[from]!
    const share = 1 / ++corners[rim]!
    for (let k = 0; k < 3; k++) {
      const so = middles[3 * rim + k]!
      middles[3 * rim + k] = so + (positions[3 * from + k]! - so) * share
    }
  }
  for (const side of loose) {
    const t = Math.floor(side / 3)
    const from = 3 * indices[side]!
    const to = 3 * indices[side % 3 === 2 ? side - 2 : side + 1]!
    const rim = 3 * rims.rimOf[indices[side]!]!
    const body = bodyOf[t]!
    const ox = origins[3 * body]!
    const oy = origins[3 * body + 1]!
    const oz = origins[3 * body + 2]!
    const fx = positions[from]! - ox
    const fy = positions[from + 1]! - oy
    const fz = positions[from + 2]! - oz
    const mx = middles[rim]! - ox
    const my = middles[rim + 1]! - oy
    const mz = middles[rim + 2]! - oz
    // The fan runs each side of the rim backwards: to, from, middle.
    const sixth =
      ((positions[to]! - ox) * (fy * mz - fz * my) +
        (positions[to + 1]! - oy) * (fz * mx - fx * mz) +
        (positions[to + 2]! - oz) * (fx * my - fy * mx)) /
      6
    add(body, turned[t] === 1 ? -sixth : sixth)
  }
}

/** Numbers the rims: loose sides that touch belong to one. */
function nameRims(mesh: Mesh, loose: readonly number[]) {
  const { indices } = mesh
  const parents = new Uint32Array(mesh.positions.length / 3)
  for (let v = 0; v < parents.length; v++) parents[v] = v
  const find = (vertex: number) => {
    let at = vertex
    while (parents[at] !== at) {
      parents[at] = parents[parents[at]!]!
      at = parents[at]!
    }
    return at
  }
  for (const side of loose) {
    const a = find(indices[side]!)
    const b = find(indices[side % 3 === 2 ? side - 2 : side + 1]!)
    if (a < b) parents[b] = a
    else parents[a] = b
  }
  const rimOf = new Uint32Array(parents.length)
  const named = new Uint8Array(parents.length)
  let count = 0
  for (const side of loose) {
    const vertex = indices[side]!
    const root = find(vertex)
    if (named[root] === 0) {
      named[root] = 1
      rimOf[root] = count++
    }
    if (root !== vertex) rimOf[vertex] = rimOf[root]!
  }
  return { count, rimOf }
}

/** The box round all of them. */
export function joinBounds(all: readonly Bounds[]): Bounds {
  const min: [number, number, number] = [Infinity, Infinity, Infinity]
  const max: [number, number, number] = [-Infinity, -Infinity, -Infinity]
  for (const bounds of all) {
    for (let k = 0; k < 3; k++) {
      min[k] = Math.min(min[k]!, bounds.min[k]!)
      max[k] = Math.max(max[k]!, bounds.max[k]!)
    }
  }
  return { min, max }
}
