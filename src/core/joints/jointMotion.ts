import {
  after,
  mapAxes,
  mapDirection,
  mapPoint,
  STAY,
  type Axes,
  type RigidMap,
} from '../mesh/rigidMaps.ts'
import type { Joint, JointEnd } from '../model/joints.ts'
import type { Vec3 } from '../model/mesh.ts'
import { cross, dot, minus, plus, times, unit } from '../model/vectors.ts'

/** The mirror image of a mesh, in x. */
export const MIRROR_X: RigidMap = { matrix: [-1, 0, 0, 0, 1, 0, 0, 0, 1], move: [0, 0, 0] }

/** What an end says of direction and place: along which way, and through which points. */
interface Seat {
  /** Unit: where a's face looks, and where b's must not; without faces the axis. */
  readonly way: Vec3
  /** On the faces, or half-way down the first bore. */
  readonly at: Vec3
  readonly centres: readonly Vec3[]
}

/**
 * Where piece b is in the axes of piece a. Axes meet as well as their spacing lets them (least
 * squares of the distances square to the faces); faces touch, `gapMm` apart. With one axis or none,
 * `turnDeg` turns b about a's face normal from where the two ends' `squareTo` directions meet. A
 * mirror image is taken of b's mesh, in x, before all else.
 */
export function jointMotion(joint: Omit<Joint, 'id'>): RigidMap {
  if (joint.kind === 'drawn') return STAY
  const mirror = joint.mirrored ? MIRROR_X : STAY
  const a = seatOf(joint.a, STAY)
  const b = seatOf(joint.b, mirror)
  const touches = joint.a.face !== null && joint.b.face !== null
  const start = axesOn(a.way)
  // Faces look at each other; axes without faces go the same way.
  const from = axesOn(touches ? times(b.way, -1) : b.way)
  const settles = a.centres.length > 1 && a.centres.length === b.centres.length
  const angle = settles
    ? bestTurn(flatPoints(a, start), flatPoints(b, from))
    : (joint.turnDeg * Math.PI) / 180
  const [sine, cosine] = [Math.sin(angle), Math.cos(angle)]
  const [right, up] = start
  const to: Axes = [
    plus(times(right, cosine), times(up, sine)),
    minus(times(up, cosine), times(right, sine)),
    a.way,
  ]
  const onAxis = mapAxes(from, to, middle(b), middle(a))
  const liftMm = touches
    ? dot(minus(a.at, mapPoint(onAxis, b.at)), a.way) + joint.gapMm
    : joint.slideMm
  const { matrix } = onAxis
  return after({ matrix, move: plus(onAxis.move, times(a.way, liftMm)) }, mirror)
}

/** The direction an end is joined in: out of its face, else along its first bore. Unit length. */
export function wayOf({ face, bores }: Pick<JointEnd, 'face' | 'bores'>): Vec3 {
  return unit(face?.normal ?? bores[0]?.axis ?? [0, 0, 1])
}

function seatOf(end: JointEnd, mirror: RigidMap): Seat {
  const centres = end.bores.map(({ centreMm }) => mapPoint(mirror, centreMm))
  const at = end.face === null ? (centres[0] ?? [0, 0, 0]) : mapPoint(mirror, end.face.pointMm)
  return { way: mapDirection(mirror, wayOf(end)), at, centres }
}

function middle({ centres, at }: Seat): Vec3 {
  if (centres.length === 0) return at
  return times(centres.reduce(plus, [0, 0, 0]), 1 / centres.length)
}

function axesOn(way: Vec3): Axes {
  const right = squareTo(way)
  return [right, cross(way, right), way]
}

/**
 * A direction square to a unit vector, the same one at every call; what is kept as `turnDeg` begins
 * here.
 */
function squareTo(axis: Vec3): Vec3 {
  const sizes = axis.map(Math.abs)
  const least = sizes.indexOf(Math.min(...sizes))
  const helper: Vec3 = least === 0 ? [1, 0, 0] : least === 1 ? [0, 1, 0] : [0, 0, 1]
  return unit(minus(helper, times(axis, dot(helper, axis))))
}

/** Its centres about their middle, along two axes. */
function flatPoints(seat: Seat, [right, up]: Axes): readonly Flat[] {
  const centre = middle(seat)
  return seat.centres.map((point) => {
    const off = minus(point, centre)
    return [dot(off, right), dot(off, up)]
  })
}

type Flat = readonly [x: number, y: number]

/** The turn that lays one set of points on another with the least sum of squares. Radians */
function bestTurn(onto: readonly Flat[], points: readonly Flat[]): number {
  let [sine, cosine] = [0, 0]
  points.forEach(([x, y], i) => {
    const [u, v] = onto[i] ?? [0, 0]
    sine += x * v - y * u
    cosine += x * u + y * v
  })
  return Math.atan2(sine, cosine)
}
