import type { Mesh, Vec3 } from '../../model/mesh.ts'
import { surveyFacets, type Facets } from './facets.ts'
import { eachRim, seeWall } from './wallRims.ts'
import { cosineTo, eachWall, isTooLarge, type Wall } from './walls.ts'

/** A hexagonal pocket, as for a nut, or a slot with round ends; in the mesh's own unit. */
export interface Pocket {
  readonly kind: 'hexagon' | 'slot'
  /** As of `Hole`. */
  readonly axis: Vec3
  /** On the axis, half-way down. */
  readonly centre: Vec3
  /** Across the flats; of a slot its width. */
  readonly diameter: number
  /** Between the ends, as wide as it is: 0 for a hexagon. */
  readonly stretch: number
  /** Unit vector along a slot; of a hexagon across two of its flats. */
  readonly along: Vec3
  readonly depth: number
  /** No floor and no step inwards at the end the axis points away from, and to. */
  readonly openLow: boolean
  readonly openHigh: boolean
}

/** A hexagon turns by 60°; more is a square. */
const MOST_TURN = (62.5 * Math.PI) / 180
/** Flats of a hexagon turn by this much, give or take 1.5°. */
const HEXAGON_TURN = Math.PI / 3
const TURN_SLACK = (1.5 * Math.PI) / 180
/** Sides and ends of a slot, flats of a hexagon: equal within this share of the width. */
const UNEVEN = 0.03
/**
 * A round hole of few facets would be a short slot; one that is meant stretches by more of its
 * width.
 */
const LEAST_STRETCH = 0.25

/** Finds hexagonal pockets and slots with round ends; those that are open to a side are none. */
export function findPockets(mesh: Mesh): readonly Pocket[] {
  if (isTooLarge(mesh)) return []
  const facets = surveyFacets(mesh)
  const found: Pocket[] = []
  eachWall(mesh, facets, MOST_TURN, (wall, belongs) => {
    const pocket = pocketOf(mesh, facets, wall, belongs)
    if (pocket !== null) found.push(pocket)
  })
  return found
}

/** A flat of a wall, seen along the axis: its normal points into the hollow. */
interface Flat {
  readonly nx: number
  readonly ny: number
  readonly angle: number
  /** Where its plane stands: normal · point. */
  readonly stands: number
}

/** Two flats that differ by less are one (radians; sagittas of larger turns tell them apart). */
const SAME_ANGLE = 0.005

function pocketOf(
  mesh: Mesh,
  facets: Facets,
  wall: Wall,
  belongs: (triangle: number) => boolean,
): Pocket | null {
  const { axis, triangles } = wall
  if (triangles.length < 6) return null
  const { positions, indices } = mesh
  const seen = seeWall(mesh, wall)
  const { right, up, own, at } = seen
  const corners = [
    ...new Set(triangles.flatMap((t) => [0, 1, 2].map((k) => indices[3 * t + k]!))),
  ].map((vertex) => ({ x: at(vertex, right), y: at(vertex, up), z: at(vertex, axis) }))
  const flats = flatsOf(triangles, facets, (t) => {
    const corner = indices[3 * t]!
    const nx = cosineTo(facets.normals, t, right)
    const ny = cosineTo(facets.normals, t, up)
    return { nx, ny, stands: at(corner, right) * nx + at(corner, up) * ny }
  })
  const shape = hexagonOf(flats) ?? slotOf(flats, corners)
  if (shape === null) return null
  const low = Math.min(...corners.map(({ z }) => z))
  const high = Math.max(...corners.map(({ z }) => z))
  const floors = [0, 0]
  eachRim(
    mesh,
    facets,
    wall,
    seen,
    [low, high],
    belongs,
    ({ triangle, isLow, tip, x, y, length }) => {
      // A floor goes on into the hollow, to which the wall's normal points.
      const inwards =
        (at(tip, right) - x) * cosineTo(facets.normals, triangle, right) +
        (at(tip, up) - y) * cosineTo(facets.normals, triangle, up)
      floors[isLow ? 0 : 1]! += inwards > 0 ? length : -length
    },
  )
  const middle = (low + high) / 2
  const inSpace = (x: number, y: number, z: number): Vec3 =>
    [0, 1, 2].map((k) => x * right[k]! + y * up[k]! + z * axis[k]!) as unknown as Vec3
  const offset = inSpace(shape.x, shape.y, middle)
  return {
    kind: shape.kind,
    axis,
    centre: [0, 1, 2].map((k) => positions[own + k]! + offset[k]!) as unknown as Vec3,
    diameter: shape.width,
    stretch: shape.stretch,
    along: inSpace(shape.dx, shape.dy, 0),
    depth: high - low,
    openLow: floors[0]! <= 0,
    openHigh: floors[1]! <= 0,
  }
}

function flatsOf(
  triangles: readonly number[],
  { areas }: Facets,
  seen: (triangle: number) => Omit<Flat, 'angle'>,
): readonly Flat[] {
  const all = triangles
    .filter((t) => areas[t]! > 0)
    .map((t): Flat => {
      const flat = seen(t)
      return { ...flat, angle: Math.atan2(flat.ny, flat.nx) }
    })
    .sort((a, b) => a.angle - b.angle)
  const flats: Flat[] = []
  for (const flat of all) {
    const last = flats.at(-1)
    if (last === undefined || flat.angle - last.angle > SAME_ANGLE) flats.push(flat)
  }
  const [first] = flats
  const last = flats.at(-1)
  // The two ends of the round may be one flat.
  if (flats.length > 1 && first!.angle + 2 * Math.PI - last!.angle < SAME_ANGLE) flats.pop()
  return flats
}

interface Shape {
  readonly kind: Pocket['kind']
  readonly x: number
  readonly y: number
  readonly width: number
  readonly stretch: number
  readonly dx: number
  readonly dy: number
}

function hexagonOf(flats: readonly Flat[]): Shape | null {
  if (flats.length !== 6) return null
  const turns = flats.map(({ angle }, i) => {
    const next = flats[(i + 1) % 6]!.angle
    return i === 5 ? next + 2 * Math.PI - angle : next - angle
  })
  if (turns.some((turn) => Math.abs(turn - HEXAGON_TURN) > TURN_SLACK)) return null
  // Of six normals 60° apart Σ n·nᵀ is three times the identity.
  const x = flats.reduce((sum, { nx, stands }) => sum + nx * stands, 0) / 3
  const y = flats.reduce((sum, { ny, stands }) => sum + ny * stands, 0) / 3
  const reaches = flats.map(({ nx, ny, stands }) => x * nx + y * ny - stands)
  const mean = reaches.reduce((sum, reach) => sum + reach, 0) / 6
  if (!(mean > 0) || reaches.some((reach) => Math.abs(reach - mean) > UNEVEN * mean)) return null
  const { nx, ny } = flats[0]!
  return { kind: 'hexagon', x, y, width: 2 * mean, stretch: 0, dx: nx, dy: ny }
}

function slotOf(
  flats: readonly Flat[],
  corners: readonly { readonly x: number; readonly y: number }[],
): Shape | null {
  if (flats.length < 6) return null
  let best: Shape | null = null
  for (const one of flats) {
    const other = flats.find(({ nx, ny }) => nx * one.nx + ny * one.ny < -0.99995)
    if (other === undefined || other.angle < one.angle) continue
    const width = -(one.stands + other.stands)
    if (!(width > 0)) continue
    const [dx, dy] = [-one.ny, one.nx]
    const reach = corners.map(({ x, y }) => x * dx + y * dy)
    const [low, high] = [Math.min(...reach), Math.max(...reach)]
    const stretch = high - low - width
    if (stretch < LEAST_STRETCH * width) continue
    const middle = (low + high) / 2
    // Where along the normal the middle line lies.
    const level = (one.stands - other.stands) / 2
    const off = corners.map(({ x, y }) => {
      const along = Math.max(0, Math.abs(x * dx + y * dy - middle) - stretch / 2)
      return Math.hypot(along, x * one.nx + y * one.ny - level)
    })
    const isSlot = off.every((each) => Math.abs(each - width / 2) < UNEVEN * width)
    if (!isSlot || (best !== null && best.stretch >= stretch)) continue
    const [x, y] = [middle * dx + level * one.nx, middle * dy + level * one.ny]
    best = { kind: 'slot', x, y, width, stretch, dx, dy }
  }
  return best
}
