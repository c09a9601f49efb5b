import type { Mesh, Vec3 } from '../../model/mesh.ts'
import { ALONE, type Facets } from './facets.ts'
import { flatAxes } from './fitCircle.ts'
import { sineAlong, type Wall } from './walls.ts'

/**
 * A triangle beside the wall that faces less than this along the axis (cosine) is a sliver of the
 * wall itself: no floor, no mouth.
 */
export const FACES_END = 0.3
/** An edge whose middle lies in this middle part of the wall's height belongs to no end. */
const NEAR_END = 0.25

/**
 * A wall seen along its axis, about a point of its own: far from the origin that keeps the digits.
 */
export interface SeenWall {
  readonly right: Vec3
  readonly up: Vec3
  /** Place in `positions` of the point. */
  readonly own: number
  /** How far a vertex lies along a direction. */
  readonly at: (vertex: number, along: Vec3) => number
}

export function seeWall({ positions, indices }: Mesh, { axis, triangles }: Wall): SeenWall {
  const { right, up } = flatAxes(axis)
  const own = 3 * indices[3 * triangles[0]!]!
  const at = (vertex: number, along: Vec3): number =>
    (positions[3 * vertex]! - positions[own]!) * along[0] +
    (positions[3 * vertex + 1]! - positions[own + 1]!) * along[1] +
    (positions[3 * vertex + 2]! - positions[own + 2]!) * along[2]
  return { right, up, own, at }
}

/**
 * An edge at an end of a wall, with what goes on from there. Vertices by number, coordinates as
 * seen.
 */
export interface RimEdge {
  /** Of the wall, and beside it. */
  readonly triangle: number
  readonly beside: number
  readonly isLow: boolean
  /** The corner of the triangle beside that is not on the edge. */
  readonly tip: number
  /** Middle of the edge. */
  readonly x: number
  readonly y: number
  /** As seen along the axis. */
  readonly length: number
  /** Of the triangle beside: how far it faces along the axis, as a cosine. */
  readonly facing: number
}

/** Goes round both ends of a wall that reaches from `low` to `high` along its axis. */
export function eachRim(
  { indices }: Mesh,
  facets: Facets,
  { axis, triangles }: Wall,
  { right, up, at }: SeenWall,
  [low, high]: readonly [number, number],
  belongs: (triangle: number) => boolean,
  tell: (edge: RimEdge) => void,
): void {
  for (const triangle of triangles) {
    for (let side = 3 * triangle; side < 3 * triangle + 3; side++) {
      const other = facets.across[side]!
      if (other === ALONE || belongs(Math.floor(other / 3))) continue
      const beside = Math.floor(other / 3)
      const facing = sineAlong(facets.normals, beside, axis)
      if (facing < FACES_END) continue
      const from = indices[side]!
      const to = indices[side % 3 === 2 ? side - 2 : side + 1]!
      const share = ((at(from, axis) + at(to, axis)) / 2 - low) / (high - low)
      if (share >= NEAR_END && share <= 1 - NEAR_END) continue
      tell({
        triangle,
        beside,
        isLow: share < 0.5,
        tip: indices[other - (other % 3) + ((other + 2) % 3)]!,
        x: (at(from, right) + at(to, right)) / 2,
        y: (at(from, up) + at(to, up)) / 2,
        length: Math.hypot(at(to, right) - at(from, right), at(to, up) - at(from, up)),
        facing,
      })
    }
  }
}
