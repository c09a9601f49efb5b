import { mapDirection, mapPoint, type RigidMap } from '../mesh/rigidMaps.ts'
import type { BoreMark, JointEnd } from '../model/joints.ts'
import type { Vec3 } from '../model/mesh.ts'
import { dot, lengthOf, minus, plus, times, unit } from '../model/vectors.ts'
import { wayOf } from './jointMotion.ts'
import type { FlatFace, Mouth } from './types.ts'

/**
 * What of a part can be joined, in its own axes, and what it may be turned and mirrored about. mm
 */
export interface JoinablePart {
  readonly mouths: readonly Mouth[]
  readonly faces: readonly FlatFace[]
  /** Middle of its box, of its mass, and the origin of its drawing. */
  readonly centresMm: readonly Vec3[]
}

/** The same holes of a part again: round a circle, or across a plane. */
export interface EqualPattern {
  readonly kind: 'ring' | 'mirror'
  /** Round the whole circle; 2 across a plane. The first is the one that was asked for. */
  readonly wanted: number
  /** Of the others those that are there: how they come to lie, and their end. */
  readonly found: readonly Image[]
}

export interface Image {
  readonly map: RigidMap
  readonly end: JointEnd
}

/** Two bores nearer than this are one, and of one width within this. mm */
const SAME_MM = 0.15
const SAME_WIDTH_MM = 0.25
const ONE_WAY = 0.999
/** Frames have two to eight arms. */
const COUNTS = [2, 3, 4, 5, 6, 8] as const
const OWN_AXES: readonly Vec3[] = [
  [1, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
]

/**
 * What was found for ends of a part: the same holes are asked for again with every step of a hand.
 */
const known = new WeakMap<JoinablePart, Map<string, readonly EqualPattern[]>>()

/**
 * Where a part has the bores of an end again; the fullest first, each set of bores told by the
 * first that has it.
 */
export function equalPatterns(end: JointEnd, part: JoinablePart): readonly EqualPattern[] {
  if (end.bores.length === 0) return []
  const own = known.get(part) ?? new Map<string, readonly EqualPattern[]>()
  known.set(part, own)
  const { bores, face } = end
  const key = JSON.stringify([bores.map(({ centreMm, axis }) => [centreMm, axis]), face])
  const found = own.get(key) ?? findPatterns(end, part)
  own.set(key, found)
  return found
}

function findPatterns(end: JointEnd, part: JoinablePart): readonly EqualPattern[] {
  const way = wayOf(end)
  const isOwn = OWN_AXES.some((axis) => Math.abs(dot(axis, way)) >= ONE_WAY)
  const orbits = [...(isOwn ? [] : [way]), ...OWN_AXES].flatMap((axis) => orbitsAbout(part, axis))
  const patterns = orbits.flatMap(({ kind, wanted, maps }): readonly EqualPattern[] => {
    const found = maps.flatMap((map): readonly Image[] => {
      const there = imageOf(end, part.mouths, map)
      return there === null || isSameEnd(there, end) ? [] : [{ map, end: there }]
    })
    const distinct = found.filter(
      (one, i) => !found.slice(0, i).some((other) => isSameEnd(one.end, other.end)),
    )
    return distinct.length > 0 ? [{ kind, wanted, found: distinct }] : []
  })
  return patterns.toSorted(
    (one, other) =>
      one.wanted - one.found.length - (other.wanted - other.found.length) ||
      other.wanted - one.wanted,
  )
}

/** Maps that a part may be turned or mirrored by, together. */
interface Orbit {
  readonly kind: EqualPattern['kind']
  readonly wanted: number
  readonly maps: readonly RigidMap[]
}

const knownOrbits = new WeakMap<JoinablePart, Map<string, readonly Orbit[]>>()

/** Rings about an axis through each of the part's middles, and the plane across it. */
function orbitsAbout(part: JoinablePart, axis: Vec3): readonly Orbit[] {
  const own = knownOrbits.get(part) ?? new Map<string, readonly Orbit[]>()
  knownOrbits.set(part, own)
  const key = axis.join(' ')
  const before = own.get(key)
  if (before !== undefined) return before
  const { centresMm } = part
  const centres = centresMm.filter(
    (one, i) => !centresMm.slice(0, i).some((other) => lengthOf(minus(one, other)) < SAME_MM / 10),
  )
  const made = centres.flatMap((centre): readonly Orbit[] => [
    { kind: 'mirror', wanted: 2, maps: [mirrorAt(axis, centre)] },
    ...COUNTS.map((count): Orbit => ({
      kind: 'ring',
      wanted: count,
      maps: Array.from({ length: count - 1 }, (_, k) =>
        turnAbout(axis, centre, (2 * Math.PI * (k + 1)) / count),
      ),
    })),
  ])
  own.set(key, made)
  return made
}

/** The end where the map takes it, with the bores that are there; null where one is missing. */
function imageOf(end: JointEnd, mouths: readonly Mouth[], map: RigidMap): JointEnd | null {
  // Nearly all maps lead to no hole: that is settled before anything is made.
  const [lead] = end.bores
  if (lead === undefined) return null
  const [x, y, z] = mapPoint(map, lead.centreMm)
  const isHit = mouths.some(({ bore: { centreMm } }) => {
    const [dx, dy, dz] = [centreMm[0] - x, centreMm[1] - y, centreMm[2] - z]
    return dx * dx + dy * dy + dz * dz <= SAME_MM * SAME_MM
  })
  if (!isHit) return null
  const normal = end.face === null ? null : unit(mapDirection(map, end.face.normal))
  const bores: BoreMark[] = []
  for (const bore of end.bores) {
    const at = mapPoint(map, bore.centreMm)
    const axis = unit(mapDirection(map, bore.axis))
    const mouth = mouths.find(
      ({ bore: other, out }) =>
        other.kind === bore.kind &&
        lengthOf(minus(other.centreMm, at)) <= SAME_MM &&
        Math.abs(other.diameterMm - bore.diameterMm) <= SAME_WIDTH_MM &&
        Math.abs(dot(other.axis, axis)) >= ONE_WAY &&
        (normal === null || dot(out, normal) >= ONE_WAY),
    )
    if (mouth === undefined) return null
    const { bore: there } = mouth
    bores.push(
      dot(there.axis, axis) >= 0
        ? there
        : {
            ...there,
            axis: times(there.axis, -1),
            openLow: there.openHigh,
            openHigh: there.openLow,
          },
    )
  }
  const face = end.face && normal && { pointMm: mapPoint(map, end.face.pointMm), normal }
  return { ...end, bores, face }
}

/** Whether two ends are the same bores from the same side, in whatever order. */
export function isSameEnd(one: JointEnd, other: JointEnd): boolean {
  return (
    one.bores.length === other.bores.length &&
    dot(wayOf(one), wayOf(other)) > 0 &&
    one.bores.every((bore) => other.bores.some((each) => isSameBore(bore, each)))
  )
}

export function isSameBore(one: BoreMark, other: BoreMark): boolean {
  return one.kind === other.kind && lengthOf(minus(one.centreMm, other.centreMm)) <= SAME_MM
}

function about(centre: Vec3, matrix: RigidMap['matrix']): RigidMap {
  const moved = mapPoint({ matrix, move: [0, 0, 0] }, centre)
  return { matrix, move: minus(centre, moved) }
}

function mirrorAt([x, y, z]: Vec3, centre: Vec3): RigidMap {
  return about(centre, [
    1 - 2 * x * x,
    -2 * x * y,
    -2 * x * z,
    -2 * x * y,
    1 - 2 * y * y,
    -2 * y * z,
    -2 * x * z,
    -2 * y * z,
    1 - 2 * z * z,
  ])
}

function turnAbout(axis: Vec3, centre: Vec3, angle: number): RigidMap {
  const [cosine, sine] = [Math.cos(angle), Math.sin(angle)]
  const turned = OWN_AXES.map((from): Vec3 => {
    const along = times(axis, dot(from, axis) * (1 - cosine))
    const [x, y, z] = axis
    const side: Vec3 = [
      y * from[2] - z * from[1],
      z * from[0] - x * from[2],
      x * from[1] - y * from[0],
    ]
    return plus(plus(times(from, cosine), times(side, sine)), along)
  })
  const [p, q, r] = turned as [Vec3, Vec3, Vec3]
  return about(centre, [p[0], q[0], r[0], p[1], q[1], r[1], p[2], q[2], r[2]])
}
