import type { RigidMap } from '../mesh/split/rigidMap.ts'
import type { Nine } from '../mesh/pose.ts'
import type { Joint, JointEnd } from '../model/joints.ts'
import type { Vec3 } from '../model/mesh.ts'
import { columns, cross, product, squareTo, STAY, transposed, turned } from './motion.ts'
import { dot, minus, plus, times, unit } from './vectors.ts'

const MIRROR_X: Nine = [-1, 0, 0, 0, 1, 0, 0, 0, 1]

/** What an end says of direction and place: along which way, and through which points. */
interface Seat {
  /** Unit: where a's face looks, and where b's must not; without faces the axis. */
  readonly way: Vec3
  /** On the faces, or half-way down the first bore. */
  readonly at: Vec3
  readonly centres: readonly Vec3[]
}

/**
 * Where piece b is in the axes of piece a. Axes meet as well as their spacing lets them (least squares of the distances
 * square to the faces); faces touch, `gapMm` apart. With one axis or none, `turnDeg` turns b about a's face normal from
 * where the two ends' `squareTo` directions meet. A mirror image is taken of b's mesh, in x, before all else.
 */
export function jointMotion(joint: Joint): RigidMap {
  if (joint.kind === 'drawn') return STAY
  const mirror = joint.mirrored ? MIRROR_X : STAY.matrix
  const a = seatOf(joint.a, STAY.matrix)
  const b = seatOf(joint.b, mirror)
  const touches = joint.a.face !== null && joint.b.face !== null
  // Faces look at each other; axes without faces go the same way.
  const wayB = touches ? times(b.way, -1) : b.way
  const start = frameOn(a.way, squareTo(a.way))
  const from = frameOn(wayB, squareTo(wayB))
  const centreA = middle(a)
  const centreB = middle(b)
  const settles = a.centres.length > 1 && a.centres.length === b.centres.length
  const angle = settles
    ? bestTurn(
        a.centres.map((point) => turned(transposed(start), minus(point, centreA))),
        b.centres.map((point) => turned(transposed(from), minus(point, centreB))),
      )
    : (joint.turnDeg * Math.PI) / 180
  const turn = product(product(start, aboutZ(angle)), transposed(from))
  const onAxis = minus(centreA, turned(turn, centreB))
  const liftMm = touches
    ? dot(minus(a.at, plus(turned(turn, b.at), onAxis)), a.way) + joint.gapMm
    : joint.slideMm
  return { matrix: product(turn, mirror), move: plus(onAxis, times(a.way, liftMm)) }
}

/** How far apart the worst pair of axes stays, mm, measured square to the way the pieces meet. */
export function spacingErrorMm(joint: Joint): number {
  const { matrix, move } = jointMotion(joint)
  const { way } = seatOf(joint.a, STAY.matrix)
  const apart = joint.a.bores.map(({ centreMm }, i) => {
    const other = joint.b.bores[i]
    if (other === undefined) return 0
    const gap = minus(plus(turned(matrix, other.centreMm), move), centreMm)
    return Math.hypot(...minus(gap, times(way, dot(gap, way))))
  })
  return joint.kind === 'drawn' ? 0 : Math.max(0, ...apart)
}

function seatOf(end: JointEnd, mirror: Nine): Seat {
  const centres = end.bores.map(({ centreMm }) => turned(mirror, centreMm))
  const way = end.face?.normal ?? end.bores[0]?.axis ?? [0, 0, 1]
  const at = end.face === null ? (centres[0] ?? [0, 0, 0]) : turned(mirror, end.face.pointMm)
  return { way: turned(mirror, unit(way)), at, centres }
}

function middle({ centres, at }: Seat): Vec3 {
  if (centres.length === 0) return at
  return times(centres.reduce(plus, [0, 0, 0]), 1 / centres.length)
}

function frameOn(z: Vec3, x: Vec3): Nine {
  return columns(x, cross(z, x), z)
}

function aboutZ(angle: number): Nine {
  const [sine, cosine] = [Math.sin(angle), Math.cos(angle)]
  return [cosine, -sine, 0, sine, cosine, 0, 0, 0, 1]
}

/** The turn about z that lays one set of points on another with the least sum of squares. Radians */
function bestTurn(onto: readonly Vec3[], points: readonly Vec3[]): number {
  let [sine, cosine] = [0, 0]
  points.forEach(([x, y], i) => {
    const [u, v] = onto[i] ?? [0, 0]
    sine += x * v - y * u
    cosine += x * u + y * v
  })
  return Math.atan2(sine, cosine)
}
