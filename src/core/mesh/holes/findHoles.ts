import { onceAMesh } from '../onceAMesh.ts'
import type { Mesh, Vec3 } from '../../model/mesh.ts'
import { holeOf, type Bore } from './boreEnds.ts'
import { surveyFacets, type Facets } from './facets.ts'
import { fitCircle } from './fitCircle.ts'
import { eachRim, FACES_END, seeWall } from './wallRims.ts'
import { cosineTo, eachWall, isTooLarge, type Wall } from './walls.ts'

/** A round bore, in the mesh's own unit. */
export interface Hole {
  /** Unit length; its first coordinate beyond 1e-5 is positive. */
  readonly axis: Vec3
  /** On the axis, half-way down the bore. */
  readonly centre: Vec3
  /** Through the corners of its flat facets. */
  readonly diameter: number
  /** Between the facets: the widest pin that a mesh drawn so lets through. */
  readonly clear: number
  readonly depth: number
  /**
   * Air is reached at the end the axis points away from, through a narrower or wider bore on the
   * same axis too.
   */
  readonly openLow: boolean
  /** The same at the end the axis points to. */
  readonly openHigh: boolean
  /**
   * How far a cone goes on past that end (a countersink, a chamfer), in one strip of triangles; 0
   * where none does.
   */
  readonly flareLow: number
  readonly flareHigh: number
  /** How wide that cone gets; the bore's own diameter where there is none. */
  readonly mouthLow: number
  readonly mouthHigh: number
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
/** Points of the wall lie on the circle to within this share of its radius. */
const OUT_OF_ROUND = 0.02
/** One that faces more than this along the axis lies across it. */
const FLAT_END = 0.95

/**
 * Finds the round bores of a mesh: walls of flat facets that all stand along one axis, each turned
 * inwards against its neighbour, once round. Slots, hexagons, fillets and dished hollows are none.
 * Once a mesh: a part is asked again with each geometry, load and joint it is tried with.
 *
 * @param mesh faced outwards (see `orientMesh`), in any unit.
 */
export const findHoles = onceAMesh(holesOf)

function holesOf(mesh: Mesh): readonly Hole[] {
  if (isTooLarge(mesh)) return []
  const facets = surveyFacets(mesh)
  const bores: Bore[] = []
  eachWall(mesh, facets, MOST_TURN, (wall, belongs) => {
    const bore = boreOf(mesh, facets, wall, belongs)
    if (bore !== null) bores.push(bore)
  })
  return bores.map((bore) => holeOf(mesh, bore, bores))
}

/**
 * What lies round one end of a wall, by length of its rim: all, floor less face, cone; and how far
 * that goes on.
 */
const newEnd = () => ({ rim: 0, floor: 0, cone: 0, flare: 0, reach: 0 })

const isCone = ({ rim, cone }: ReturnType<typeof newEnd>): boolean => cone > 0.9 * rim

function boreOf(
  mesh: Mesh,
  facets: Facets,
  wall: Wall,
  belongs: (triangle: number) => boolean,
): Bore | null {
  const { positions, indices } = mesh
  const { axis, triangles, turn } = wall
  if (triangles.length < 6) return null
  const seen = seeWall(mesh, wall)
  const { right, up, own, at } = seen
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
  // Points that other cuts put on the straight between two corners lie inside the circle by up to
  // its sagitta.
  const sagitta = 1 - Math.cos(turn / 2)
  const circle = fitCircle(xs, ys, sagitta + OUT_OF_ROUND, MOST_TURN)
  if (circle === null) return null

  const ends = [newEnd(), newEnd()] as const
  eachRim(mesh, facets, wall, seen, [low, high], belongs, (edge) => {
    const { beside, isLow, tip, length, facing } = edge
    const end = ends[isLow ? 0 : 1]
    const dx = edge.x - circle.x
    const dy = edge.y - circle.y
    // A floor goes on towards the axis, a face round the mouth away from it.
    const outwards = (at(tip, right) - edge.x) * dx + (at(tip, up) - edge.y) * dy > 0
    end.rim += length
    end.floor += outwards ? -length : length
    // A cone faces the axis all round, a sloping face only on one side.
    const inwards =
      -(dx * cosineTo(facets.normals, beside, right) + dy * cosineTo(facets.normals, beside, up)) /
      circle.radius
    if (!outwards || facing > FLAT_END || inwards < FACES_END) return
    end.cone += length
    const beyond = isLow ? low - at(tip, axis) : at(tip, axis) - high
    end.flare = Math.max(end.flare, beyond)
    end.reach = Math.max(end.reach, Math.hypot(at(tip, right) - circle.x, at(tip, up) - circle.y))
  })
  let nearest = circle.radius
  for (const t of triangles) {
    const corner = indices[3 * t]!
    const across =
      (circle.x - at(corner, right)) * cosineTo(facets.normals, t, right) +
      (circle.y - at(corner, up)) * cosineTo(facets.normals, t, up)
    nearest = Math.min(nearest, across)
  }
  const [flareLow, flareHigh] = ends.map((end) => (isCone(end) ? end.flare : 0)) as [number, number]
  const [mouthLow, mouthHigh] = ends.map(
    (end) => 2 * (isCone(end) ? end.reach : circle.radius),
  ) as [number, number]
  const middle = (low + high) / 2
  const centre = (k: 0 | 1 | 2): number =>
    positions[own + k]! + circle.x * right[k] + circle.y * up[k] + middle * axis[k]
  return {
    axis,
    centre: [centre(0), centre(1), centre(2)],
    diameter: 2 * circle.radius,
    clear: 2 * nearest,
    depth: high - low,
    floorLow: ends[0].floor / (ends[0].rim || 1),
    floorHigh: ends[1].floor / (ends[1].rim || 1),
    flareLow,
    flareHigh,
    mouthLow,
    mouthHigh,
    facets: triangles.length,
  }
}
