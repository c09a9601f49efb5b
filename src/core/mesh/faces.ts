import type { Mesh, Vec3 } from '../model/mesh.ts'
import { flatAxes } from './holes/fitCircle.ts'
import { unitNormals } from './unitNormals.ts'
import type { Pose } from '../model/settings.ts'
import { dot } from '../model/vectors.ts'

/** A flat side a part can lie on without tipping. */
export interface RestingFace {
  /** Outward, unit length, in the mesh's own axes: this way faces the bed. */
  readonly normal: Vec3
  /**
   * Area that touches the bed: within 0.05 mm of the lowest point and within 1° of flat. Several
   * feet add up.
   */
  readonly flatAreaMm2: number
  /**
   * How far the centre of mass lies within the outline drawn round all contact, mm; small means it
   * tips easily.
   */
  readonly marginMm: number
  /** Height of the part lying so, mm. */
  readonly heightMm: number
  /** For `placeMesh`. */
  readonly pose: Pose
}

const FLAT_WITHIN_MM = 0.05
const FLAT_COS = Math.cos(Math.PI / 180)
/**
 * Directions that carry less than this share of the surface are not tried: curved skin, chamfers.
 */
const SMALLEST_SHARE = 0.0005
/** Directions tried, largest first; each costs a pass over the vertices. */
const MOST_DIRECTIONS = 64
/**
 * The facets of a round side are flat strips, and the part would roll on to the next: a contact
 * that tips within 8° counts only where it is a fair share of the part's width that way, as the end
 * of a tall bar is. 8° is half a facet of a 22-sided round.
 */
const EASY_TIP = Math.tan((8 * Math.PI) / 180)
const NARROW_SHARE = 0.25
/** Steps a unit, about 1°, by which directions are gathered. */
const DIRECTION_STEPS = 60

/**
 * The flat sides a part can lie on, best first: largest contact, then lowest, then least turned.
 *
 * A side counts when the part stands on it, that is nothing reaches further that way, and its
 * centre of mass (uniform, of the volume; of the surface where the mesh encloses none) is over the
 * outline of the contact. Round sides are not listed.
 *
 * @param mesh in mm, as drawn: the poses turn this mesh. 1 M triangles take about 0.5 s.
 */
export function restingFaces(mesh: Mesh): readonly RestingFace[] {
  const part = survey(mesh)
  if (part === null) return []
  const found: RestingFace[] = []
  for (const direction of mainDirections(part)) {
    const face = layOn(part, direction)
    if (face === null) continue
    const twin = found.findIndex((other) => dot(other.normal, face.normal) > FLAT_COS)
    if (twin === -1) found.push(face)
    else if (face.flatAreaMm2 > found[twin]!.flatAreaMm2) found[twin] = face
  }
  // Three digits: opposite sides of a plate are equal, whatever rounding says.
  const rank = (value: number) => Number(value.toPrecision(3))
  return found.toSorted(
    (a, b) =>
      rank(b.flatAreaMm2) - rank(a.flatAreaMm2) ||
      rank(a.heightMm) - rank(b.heightMm) ||
      turned(a.pose) - turned(b.pose),
  )
}

interface Survey {
  /** About the first vertex: far from the origin that keeps the digits. */
  readonly points: Float64Array
  readonly indices: Uint32Array
  /** Outward unit normals a triangle; zero where it has no area. */
  readonly normals: Float64Array
  readonly areas: Float64Array
  readonly areaMm2: number
  readonly centre: Vec3
}

function survey({ positions, indices }: Mesh): Survey | null {
  const triangles = Math.floor(indices.length / 3)
  if (triangles === 0) return null
  const points = new Float64Array(positions.length)
  for (let i = 0; i < points.length; i++) points[i] = positions[i]! - positions[i % 3]!
  const { normals, areas } = unitNormals({ positions: points, indices })
  let areaMm2 = 0
  let volume6 = 0
  const solid = [0, 0, 0]
  const skin = [0, 0, 0]
  for (let t = 0; t < triangles; t++) {
    const a = indices[t * 3]! * 3
    const b = indices[t * 3 + 1]! * 3
    const c = indices[t * 3 + 2]! * 3
    const twice = 2 * areas[t]!
    if (twice === 0) continue
    areaMm2 += twice / 2
    // Signed tetrahedra to the local origin; their centres are a quarter of the three corners' sum.
    const tetra =
      twice *
      (points[a]! * normals[t * 3]! +
        points[a + 1]! * normals[t * 3 + 1]! +
        points[a + 2]! * normals[t * 3 + 2]!)
    volume6 += tetra
    for (let k = 0; k < 3; k++) {
      const sum = points[a + k]! + points[b + k]! + points[c + k]!
      solid[k]! += (tetra * sum) / 4
      skin[k]! += (twice * sum) / 6
    }
  }
  if (!(areaMm2 > 0) || !Number.isFinite(areaMm2)) return null
  // An inside-out mesh has its volume and all its normals the wrong way round.
  if (volume6 < 0) for (let i = 0; i < normals.length; i++) normals[i] = -normals[i]!
  const encloses = Math.abs(volume6) / 6 > 1e-6 * areaMm2 ** 1.5
  const centre = (k: number) => (encloses ? solid[k]! / volume6 : skin[k]! / areaMm2)
  return { points, indices, normals, areas, areaMm2, centre: [centre(0), centre(1), centre(2)] }
}

/** Mean normals of the directions that carry most surface, largest first. */
function mainDirections({ normals, areas, areaMm2 }: Survey): readonly Vec3[] {
  const place = new Map<number, number>()
  const sums: { x: number; y: number; z: number; area: number }[] = []
  for (let t = 0; t < areas.length; t++) {
    const area = areas[t]!
    if (area === 0) continue
    const x = normals[t * 3]!
    const y = normals[t * 3 + 1]!
    const z = normals[t * 3 + 2]!
    const key =
      (Math.round(x * DIRECTION_STEPS) + 64) * 16384 +
      (Math.round(y * DIRECTION_STEPS) + 64) * 128 +
      (Math.round(z * DIRECTION_STEPS) + 64)
    let at = place.get(key)
    if (at === undefined) {
      at = sums.push({ x: 0, y: 0, z: 0, area: 0 }) - 1
      place.set(key, at)
    }
    const sum = sums[at]!
    sum.x += x * area
    sum.y += y * area
    sum.z += z * area
    sum.area += area
  }
  return sums
    .filter(({ area }) => area > SMALLEST_SHARE * areaMm2)
    .toSorted((a, b) => b.area - a.area)
    .slice(0, MOST_DIRECTIONS)
    .map(({ x, y, z }): Vec3 => {
      const length = Math.hypot(x, y, z)
      return [x / length, y / length, z / length]
    })
}

/**
 * Stands the part on the side that faces this way; null when nothing flat is there or it would tip.
 */
function layOn(part: Survey, normal: Vec3): RestingFace | null {
  const { points, indices, normals, areas, centre } = part
  const [nx, ny, nz] = normal
  let lowest = -Infinity
  let highest = Infinity
  const depth = new Float64Array(points.length / 3)
  for (let v = 0, p = 0; v < depth.length; v++, p += 3) {
    const d = points[p]! * nx + points[p + 1]! * ny + points[p + 2]! * nz
    depth[v] = d
    if (d > lowest) lowest = d
    if (d < highest) highest = d
  }
  const from = lowest - FLAT_WITHIN_MM
  const touching = new Set<number>()
  let flatAreaMm2 = 0
  for (let t = 0, i = 0; t < areas.length; t++, i += 3) {
    const [a, b, c] = [indices[i]!, indices[i + 1]!, indices[i + 2]!]
    if (depth[a]! < from || depth[b]! < from || depth[c]! < from) continue
    if (normals[i]! * nx + normals[i + 1]! * ny + normals[i + 2]! * nz < FLAT_COS) continue
    flatAreaMm2 += areas[t]!
    touching.add(a).add(b).add(c)
  }
  if (touching.size < 3) return null
  const { right, up } = flatAxes(normal)
  const flatPoint = (p: number): Flat => [
    points[p]! * right[0] + points[p + 1]! * right[1] + points[p + 2]! * right[2],
    points[p]! * up[0] + points[p + 1]! * up[1] + points[p + 2]! * up[2],
  ]
  const outline = hull([...touching].map((v) => flatPoint(v * 3)))
  if (outline.length < 3) return null
  const { marginMm, across } = nearestSide(outline, [dot(centre, right), dot(centre, up)])
  if (!(marginMm > 0)) return null
  if (marginMm / (lowest - dot(centre, normal)) < EASY_TIP) {
    const along = (k: 0 | 1 | 2) => across[0] * right[k] + across[1] * up[k]
    const reach = outline.map((p) => p[0] * across[0] + p[1] * across[1])
    const contactWidth = Math.max(...reach) - Math.min(...reach)
    const partWidth = widthOf(points, [along(0), along(1), along(2)])
    if (contactWidth < NARROW_SHARE * partWidth) return null
  }
  const pose = poseOnto(normal)
  return { normal, flatAreaMm2, marginMm, heightMm: lowest - highest, pose }
}

type Flat = readonly [number, number]

/** Convex outline, counter-clockwise (Andrew's monotone chain, Inf. Proc. Letters 9 (1979) 216). */
function hull(points: readonly Flat[]): readonly Flat[] {
  const sorted = points.toSorted((p, q) => p[0] - q[0] || p[1] - q[1])
  const half = (run: readonly Flat[]) => {
    const chain: Flat[] = []
    for (const p of run) {
      while (chain.length > 1 && cross(chain.at(-2)!, chain.at(-1)!, p) <= 0) chain.pop()
      chain.push(p)
    }
    return chain.slice(0, -1)
  }
  return [...half(sorted), ...half(sorted.toReversed())]
}

function cross(o: Flat, a: Flat, b: Flat): number {
  return (a[0] - o[0]) * (b[1] - o[1]) - (a[1] - o[1]) * (b[0] - o[0])
}

/**
 * Distance to the nearest side of a convex outline (negative outside) and the unit direction across
 * that side.
 */
function nearestSide(outline: readonly Flat[], point: Flat): { marginMm: number; across: Flat } {
  let marginMm = Infinity
  let across: Flat = [0, 0]
  outline.forEach((from, i) => {
    const to = outline[(i + 1) % outline.length]!
    const length = Math.hypot(to[0] - from[0], to[1] - from[1])
    const here = cross(from, to, point) / length
    if (here >= marginMm) return
    marginMm = here
    across = [(from[1] - to[1]) / length, (to[0] - from[0]) / length]
  })
  return { marginMm, across }
}

/** Width of a flock of points along a direction. */
function widthOf(points: Float64Array, [x, y, z]: Vec3): number {
  let least = Infinity
  let most = -Infinity
  for (let p = 0; p < points.length; p += 3) {
    const d = points[p]! * x + points[p + 1]! * y + points[p + 2]! * z
    if (d < least) least = d
    if (d > most) most = d
  }
  return most - least
}

/** The pose (about x, then y) that turns a direction straight down. */
function poseOnto([x, y, z]: Vec3): Pose {
  const level = Math.hypot(y, z)
  const aboutX = level < 1e-9 ? 0 : Math.atan2(-y, -z)
  const aboutY = Math.atan2(x, level)
  return { rotateDeg: [degrees(aboutX), degrees(aboutY), 0] }
}

/** Snapped to quarter turns, which `placeMesh` makes exactly; half a turn is always +180. */
function degrees(radians: number): number {
  const exact = (radians * 180) / Math.PI
  const quarter = Math.round(exact / 90) * 90
  if (Math.abs(exact - quarter) > 1e-4) return exact
  return quarter === -180 ? 180 : quarter + 0
}

function turned({ rotateDeg: [x, y] }: Pose): number {
  return Math.abs(x) + Math.abs(y)
}
