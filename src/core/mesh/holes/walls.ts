import type { Mesh, Vec3 } from '../../model/mesh.ts'
import { dot } from '../../model/vectors.ts'
import { ALONE, type Facets } from './facets.ts'

/** Two triangles that turn by less than this are one flat facet. */
const FLAT_TURN = (0.2 * Math.PI) / 180
/** How far a wall facet may lean against the axis, and an edge of the wall away from it (sine). */
const LEAN = 0.02
/** A coordinate of an axis this small is 0: else its sign would be chance. */
const ROUNDING = 1e-5
/** Larger meshes are scans or sculptures; looking for bores in them costs more than it tells. */
const MOST_TRIANGLES = 2_000_000

export const isTooLarge = ({ indices }: Mesh): boolean => indices.length / 3 > MOST_TRIANGLES

/**
 * Goes over every wall of a mesh that turns inwards, by no more than `mostTurn` radians from facet
 * to facet; `belongs` says of a triangle whether it is part of that wall.
 */
export function eachWall(
  mesh: Mesh,
  facets: Facets,
  mostTurn: number,
  tell: (wall: Wall, belongs: (triangle: number) => boolean) => void,
): void {
  const triangles = mesh.indices.length / 3
  const stamp = new Uint32Array(triangles)
  const tried = new Uint8Array(mesh.indices.length)
  // A curved surface offers a new axis at every edge, and each could wander over the same flat
  // sides.
  let budget = 20 * triangles + 10_000
  let region = 0
  for (let side = 0; side < tried.length && budget > 0; side++) {
    if (tried[side] === 1 || turnInwards(mesh, facets, side, mostTurn) === 0) continue
    const own = ++region
    const wall = growWall(mesh, facets, side, own, stamp, tried, mostTurn)
    budget -= wall.triangles.length
    tell(wall, (triangle) => stamp[triangle] === own)
  }
}

/** Triangles that stand along one axis, each turned inwards against its neighbour. */
export interface Wall {
  readonly axis: Vec3
  readonly triangles: readonly number[]
  /** Largest turn between neighbours, radians. */
  readonly turn: number
}

/**
 * How far the surface turns inwards across a side, radians; 0 where it is flat, turns outwards or
 * turns too far.
 */
function turnInwards(
  { positions, indices }: Mesh,
  facets: Facets,
  side: number,
  mostTurn: number,
): number {
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
  if (turn < FLAT_TURN || turn > mostTurn) return 0
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
  mostTurn: number,
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
      const turn = turnInwards(mesh, facets, side, mostTurn)
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

/**
 * How far a triangle faces along an axis, either way: 0 for a wall along it, 1 for a floor across
 * it.
 */
export const sineAlong = (normals: Float64Array, t: number, axis: Vec3): number =>
  Math.abs(cosineTo(normals, t, axis))

export const cosineTo = (normals: Float64Array, t: number, axis: Vec3): number =>
  normals[3 * t]! * axis[0] + normals[3 * t + 1]! * axis[1] + normals[3 * t + 2]! * axis[2]

function isFlat(normals: Float64Array, t: number, u: number): boolean {
  const cosine =
    normals[3 * t]! * normals[3 * u]! +
    normals[3 * t + 1]! * normals[3 * u + 1]! +
    normals[3 * t + 2]! * normals[3 * u + 2]!
  return cosine > Math.cos(FLAT_TURN)
}
