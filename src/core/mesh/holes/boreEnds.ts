import type { Mesh, Vec3 } from '../../model/mesh.ts'
import { dot, minus } from '../../model/vectors.ts'
import type { Hole } from './findHoles.ts'
import { flatAxes } from './fitCircle.ts'
import { isOneAxis, offAxis } from './oneAxis.ts'

type Cylinder = Pick<Hole, 'axis' | 'centre' | 'diameter' | 'depth'>

/**
 * A round wall, where it lies, and how much of each end's rim has a floor or a step inwards, less
 * what has a face.
 */
export interface Bore extends Cylinder {
  readonly clear: number
  readonly floorLow: number
  readonly floorHigh: number
  readonly flareLow: number
  readonly flareHigh: number
  readonly mouthLow: number
  readonly mouthHigh: number
  readonly facets: number
}

/**
 * A floor has more of the rim than this; slivers of a wall beside a slot or an edge have less. A
 * whole one may still have a hole that is no round bore, a hexagon: in meshes of fewer triangles
 * than that it is looked for.
 */
const WHOLE_FLOOR = 0.9
const MOST_TRIANGLES = 200_000
/** A drill's point is nearer than this share of the diameter to where the wall ends. */
const POINT = 0.6

/**
 * Two bores whose axes are off each other by less than this share of a radius stand on one axis.
 */
const OFF_AXIS = 0.05

/** A bore with what lies past its ends, which the others tell. */
export function holeOf(mesh: Mesh, bore: Bore, all: readonly Bore[]): Hole {
  const openLow = isOpen(mesh, bore, -1, all)
  const openHigh = isOpen(mesh, bore, 1, all)
  const { floorLow: _low, floorHigh: _high, ...rest } = bore
  return { ...rest, openLow, openHigh, through: openLow && openHigh }
}

/**
 * Whether air is reached past the bore's low (−1) or high (1) end, through those that go on from
 * there.
 */
function isOpen(mesh: Mesh, bore: Bore, way: -1 | 1, all: readonly Bore[]): boolean {
  const floor = way < 0 ? bore.floorLow : bore.floorHigh
  const hasFloor = floor > 0
  const next = nextBore(bore, way, all)
  if (next === null) {
    if (!hasFloor) return true
    if (floor > WHOLE_FLOOR && mesh.indices.length > 3 * MOST_TRIANGLES) return false
    return !isBlocked(mesh, bore, way * (bore.depth / 2 + POINT * bore.diameter), bore.diameter)
  }
  const reach = dot(minus(next.centre, bore.centre), bore.axis)
  const narrower = Math.min(bore.diameter, next.diameter)
  if (hasFloor && isBlocked(mesh, bore, reach, narrower)) return false
  // Each lies further along the axis than the one before, so this ends.
  return isOpen(mesh, next, dot(next.axis, bore.axis) < 0 ? (-way as -1 | 1) : way, all)
}

/**
 * The bore that begins where this one ends, on the same axis; a countersink's cone may lie between.
 */
export function nextBore<T extends Cylinder>(
  bore: Cylinder,
  way: -1 | 1,
  all: readonly T[],
): T | null {
  for (const other of all) {
    if (other === bore || !isOneAxis(other.axis, bore.axis)) continue
    const between = minus(other.centre, bore.centre)
    const along = dot(between, bore.axis)
    if (offAxis(between, bore.axis) >= (OFF_AXIS * bore.diameter) / 2) continue
    const gap = way * along - (bore.depth + other.depth) / 2
    // Two that are one wall cut short overlap by rounding.
    const overlap = 0.5 * Math.min(bore.depth, other.depth)
    if (way * along > 0 && gap > -overlap && 2 * gap < Math.max(bore.diameter, other.diameter))
      return other
  }
  return null
}

/**
 * Whether something stands in a bore's way, as far along its axis as `reach` from its middle: two
 * of three straights meet the mesh.
 */
function isBlocked(mesh: Mesh, bore: Cylinder, reach: number, diameter: number): boolean {
  const { right, up } = flatAxes(bore.axis)
  const radius = 0.2 * diameter
  // At odd angles, so that none runs along the seam of a fan.
  const blocked = [0.37, 2.53, 4.61].filter((angle) => {
    const across = (k: 0 | 1 | 2): number =>
      bore.centre[k] + radius * (Math.cos(angle) * right[k] + Math.sin(angle) * up[k])
    return meets(mesh, [across(0), across(1), across(2)], bore.axis, reach)
  })
  return blocked.length >= 2
}

/**
 * Whether a triangle stands in the way from a point along a unit direction, as far as `reach`
 * (either sign).
 */
function meets({ positions, indices }: Mesh, from: Vec3, direction: Vec3, reach: number): boolean {
  const { right, up } = flatAxes(direction)
  const at = (corner: number, along: Vec3): number => {
    const v = 3 * indices[corner]!
    return (
      (positions[v]! - from[0]) * along[0] +
      (positions[v + 1]! - from[1]) * along[1] +
      (positions[v + 2]! - from[2]) * along[2]
    )
  }
  for (let t = 0; t < indices.length; t += 3) {
    const [ax, ay] = [at(t, right), at(t, up)]
    const [bx, by] = [at(t + 1, right), at(t + 1, up)]
    const [cx, cy] = [at(t + 2, right), at(t + 2, up)]
    const u = bx * cy - cx * by
    const v = cx * ay - ax * cy
    const w = ax * by - bx * ay
    const isInside = (u >= 0 && v >= 0 && w >= 0) || (u <= 0 && v <= 0 && w <= 0)
    const twice = u + v + w
    if (!isInside || twice === 0) continue
    const height =
      (u * at(t, direction) + v * at(t + 1, direction) + w * at(t + 2, direction)) / twice
    if (height * Math.sign(reach) > 0 && Math.abs(height) < Math.abs(reach)) return true
  }
  return false
}
