import type { Mesh, Vec3 } from '../../model/mesh.ts'
import { dot } from '../../model/vectors.ts'
import { holeOf, type Bore } from './boreEnds.ts'
import { ALONE, surveyFacets, type Facets } from './facets.ts'
import { fitCircle, flatAxes } from './fitCircle.ts'

/** A round bore, in the mesh's own unit. */
export interface Hole {
  /** Unit length; its first coordinate beyond 1e-5 is positive. */
  readonly axis: Vec3
  /** On the axis, half-way down the bore. */
  readonly centre: Vec3
  readonly diameter: number
  readonly depth: number
  /** Air is reached at the end the axis points away from, through a narrower or wider bore on the same axis too. */
  readonly openLow: boolean
  /** The same at the end the axis points to. */
  readonly openHigh: boolean
  /** How far a cone goes on past that end (a countersink, a chamfer), in one strip of triangles; 0 where none does. */
  readonly flareLow: number
  readonly flareHigh: number
  /** Open at both ends. */
  readonly through: boolean
  /** Triangles of its wall. */
  readonly facets: number
}

/**
 * Neighbouring facets of a round wall turn by no more than this: 8 sides turn by 45°. A hexagon
 * (60°) is a nut pocket.
 */
const MOST_TURN = (50 * Math.PI) / 180
/** Two triangles that turn by less than this are one flat facet. */
const FLAT_TURN = (0.2 * Math.PI) / 180
/** How far a wall facet may lean against the axis, and an edge of the wall away from it (sine). */
const LEAN = 0.02
/** A coordinate of an axis this small is 0: else its sign would be chance. */
const ROUNDING = 1e-5
/** Points of the wall lie on the circle to within this share of its radius. */
const OUT_OF_ROUND = 0.02
/**
 * A triangle beside the wall that faces less than this along the axis (cosine) is a sliver of the wall itself: no
 * floor, no mouth.
 */
const FACES_END = 0.3
/** One that faces more than this along the axis lies across it. */
const FLAT_END = 0.95
/** Larger meshes are scans or sculptures; looking for bores in them costs more than it tells. */
const MOST_TRIANGLES = 2_000_000

/**
 * Finds the round bores of a mesh: walls of flat facets that all stand along one axis, each turned inwards against its
 * neighbour, once round. Slots, hexagons, fillets and dished hollows are none.
 *
 * @param mesh faced outwards (see `orientMesh`), in any unit.
 */
export function findHoles(mesh: Mesh): readonly Hole[] {
  const triangles = mesh.indices.length / 3
  if (triangles > MOST_TRIANGLES) return []
  const facets = surveyFacets(mesh)
  const stamp = new Uint32Array(triangles)
  const tried = new Uint8Array(mesh.indices.length)
  const bores: Bore[] = []
  // A curved surface offers a new axis at every edge, and each could wander over the same flat sides.
  let budget = 20 * triangles + 10_000
  let region = 0
  for (let side = 0; side < tried.length && budget > 0; side++) {
    if (tried[side] === 1 || turnInwards(mesh, facets, side) === 0) continue
    region++
    const wall = growWall(mesh, facets, side, region, stamp, tried)
    budget -= wall.triangles.length
    const bore = boreOf(mesh, facets, wall, region, stamp)
    if (bore !== null) bores.push(bore)
  }
  return bores.map((bore) => holeOf(mesh, bore, bores))
}

interface Wall {
  readonly axis: Vec3
  readonly triangles: readonly number[]
  /** Largest turn between neighbours, radians. */
  readonly turn: number
}

/** How far the surface turns inwards across a side, radians; 0 where it is flat, turns outwards or turns too far. */
function turnInwards({ positions, indices }: Mesh, facets: Facets, side: number): number {
  const other = facets.across[side]!
  if (other === ALONE) return 0
  const { normals } = facets
  const n = 3 * Math.floor(side / 3)
  const m = 3 * Math.floor(other / 3)
  const cx = normals[n + 1]! * normals[m + 2]! - normals[n + 2]! * normals[m + 1]!
  const cy = normals[n + 2]! * normals[m]! - normals[n]! * normals[m + 2]!
  const cz = normals[n]! * normals[m + 1]! - normals[n + 1]! * normals[m]!
  const cosine =
    normals[n]! * normals[m]! +
    normals[n + 1]! * normals[m + 1]! +
    normals[n + 2]! * normals[m + 2]!
  const turn = Math.atan2(Math.sqrt(cx * cx + cy * cy + cz * cz), cosine)
  if (turn < FLAT_TURN || turn > MOST_TURN) return 0
  const a = 3 * indices[side]!
  const b = 3 * indices[side % 3 === 2 ? side - 2 : side + 1]!
  const along =
    cx * (positions[b]! - positions[a]!) +
    cy * (positions[b + 1]! - positions[a + 1]!) +
    cz * (positions[b + 2]! - positions[a + 2]!)
  return along < 0 ? turn : 0
}

function growWall(
  mesh: Mesh,
  facets: Facets,
  seed: number,
  region: number,
  stamp: Uint32Array,
  tried: Uint8Array,
): Wall {
  const axis = directionOf(mesh, seed)
  const { normals, across } = facets
  const first = Math.floor(seed / 3)
  const triangles = leans(normals, first, axis) ? [] : [first]
  tried[seed] = 1
  stamp[first] = region
  let most = 0
  for (let i = 0; i < triangles.length; i++) {
    const t = triangles[i]!
    for (let side = 3 * t; side < 3 * t + 3; side++) {
      const other = across[side]!
      if (other === ALONE) continue
      const u = Math.floor(other / 3)
      const turn = turnInwards(mesh, facets, side)
      if (turn > 0) {
        if (!alongAxis(directionOf(mesh, side), axis)) continue
        tried[side] = tried[other] = 1
        if (turn > most) most = turn
      } else if (!isFlat(normals, t, u)) continue
      if (stamp[u] === region || leans(normals, u, axis)) continue
      stamp[u] = region
      triangles.push(u)
    }
  }
  return { axis, triangles, turn: most }
}

function directionOf({ positions, indices }: Mesh, side: number): Vec3 {
  const a = 3 * indices[side]!
  const b = 3 * indices[side % 3 === 2 ? side - 2 : side + 1]!
  const x = positions[b]! - positions[a]!
  const y = positions[b + 1]! - positions[a + 1]!
  const z = positions[b + 2]! - positions[a + 2]!
  const length = Math.hypot(x, y, z)
  const least = ROUNDING * length
  const first = Math.abs(x) > least ? x : Math.abs(y) > least ? y : z
  const sign = first < 0 ? -length : length
  return [x / sign, y / sign, z / sign]
}

const alongAxis = (direction: Vec3, axis: Vec3): boolean =>
  Math.abs(dot(direction, axis)) > 1 - (LEAN * LEAN) / 2

const leans = (normals: Float64Array, t: number, axis: Vec3): boolean =>
  sineAlong(normals, t, axis) > LEAN

/** How far a triangle faces along an axis, either way: 0 for a wall along it, 1 for a floor across it. */
const sineAlong = (normals: Float64Array, t: number, axis: Vec3): number =>
  Math.abs(cosineTo(normals, t, axis))

const cosineTo = (normals: Float64Array, t: number, axis: Vec3): number =>
  normals[3 * t]! * axis[0] + normals[3 * t + 1]! * axis[1] + normals[3 * t + 2]! * axis[2]

function isFlat(normals: Float64Array, t: number, u: number): boolean {
  const cosine =
    normals[3 * t]! * normals[3 * u]! +
    normals[3 * t + 1]! * normals[3 * u + 1]! +
    normals[3 * t + 2]! * normals[3 * u + 2]!
  return cosine > Math.cos(FLAT_TURN)
}

/** What lies round one end of a wall, by length of its rim: all, floor less face, cone; and how far that goes on. */
const newEnd = () => ({ rim: 0, floor: 0, cone: 0, flare: 0 })

const flareOf = ({ rim, cone, flare }: ReturnType<typeof newEnd>): number =>
  cone > 0.9 * rim ? flare : 0

function boreOf(
  mesh: Mesh,
  facets: Facets,
  wall: Wall,
  region: number,
  stamp: Uint32Array,
): Bore | null {
  const { positions, indices } = mesh
  const { axis, triangles, turn } = wall
  if (triangles.length < 6) return null
  const { right, up } = flatAxes(axis)
  // About a point of the wall: far from the origin that keeps the digits.
  const own = 3 * indices[3 * triangles[0]!]!
  const at = (vertex: number, along: Vec3): number =>
    (positions[3 * vertex]! - positions[own]!) * along[0] +
    (positions[3 * vertex + 1]! - positions[own + 1]!) * along[1] +
    (positions[3 * vertex + 2]! - positions[own + 2]!) * along[2]
  const vertices = new Set<number>()
  for (const t of triangles) for (let k = 0; k < 3; k++) vertices.add(indices[3 * t + k]!)
  const xs: number[] = []
  const ys: number[] = []
  let low = Infinity
  let high = -Infinity
  for (const vertex of vertices) {
    xs.push(at(vertex, right))
    ys.push(at(vertex, up))
    const height = at(vertex, axis)
    if (height < low) low = height
    if (height > high) high = height
  }
  // Points that other cuts put on the straight between two corners lie inside the circle by up to its sagitta.
  const sagitta = 1 - Math.cos(turn / 2)
  const circle = fitCircle(xs, ys, sagitta + OUT_OF_ROUND, MOST_TURN)
  if (circle === null) return null

  const ends = [newEnd(), newEnd()] as const
  for (const t of triangles) {
    for (let side = 3 * t; side < 3 * t + 3; side++) {
      const other = facets.across[side]!
      if (other === ALONE || stamp[Math.floor(other / 3)] === region) continue
      const beside = Math.floor(other / 3)
      const facing = sineAlong(facets.normals, beside, axis)
      if (facing < FACES_END) continue
      const from = indices[side]!
      const to = indices[side % 3 === 2 ? side - 2 : side + 1]!
      const share = ((at(from, axis) + at(to, axis)) / 2 - low) / (high - low)
      if (share >= 0.25 && share <= 0.75) continue
      const end = ends[share < 0.5 ? 0 : 1]
      const tip = indices[other - (other % 3) + ((other + 2) % 3)]!
      const dx = (at(from, right) + at(to, right)) / 2 - circle.x
      const dy = (at(from, up) + at(to, up)) / 2 - circle.y
      // A floor goes on towards the axis, a face round the mouth away from it.
      const outwards =
        (at(tip, right) - circle.x - dx) * dx + (at(tip, up) - circle.y - dy) * dy > 0
      const length = Math.hypot(at(to, right) - at(from, right), at(to, up) - at(from, up))
      end.rim += length
      end.floor += outwards ? -length : length
      // A cone faces the axis all round, a sloping face only on one side.
      const inwards =
        -(
          dx * cosineTo(facets.normals, beside, right) +
          dy * cosineTo(facets.normals, beside, up)
        ) / circle.radius
      if (!outwards || facing > FLAT_END || inwards < FACES_END) continue
      end.cone += length
      const beyond = share < 0.5 ? low - at(tip, axis) : at(tip, axis) - high
      end.flare = Math.max(end.flare, beyond)
    }
  }
  const middle = (low + high) / 2
  const centre = (k: 0 | 1 | 2): number =>
    positions[own + k]! + circle.x * right[k] + circle.y * up[k] + middle * axis[k]
  return {
    axis,
    centre: [centre(0), centre(1), centre(2)],
    diameter: 2 * circle.radius,
    depth: high - low,
    floorLow: ends[0].floor > 0,
    floorHigh: ends[1].floor > 0,
    flareLow: flareOf(ends[0]),
    flareHigh: flareOf(ends[1]),
    facets: triangles.length,
  }
}
