import { after, apart, mapDirection, type RigidMap } from '../mesh/rigidMaps.ts'
import type { Joint, JointEnd } from '../model/joints.ts'
import type { Vec3 } from '../model/mesh.ts'
import { dot } from '../model/vectors.ts'
import { equalPatterns, isSameBore, isSameEnd, type JoinablePart } from './equalPatterns.ts'
import { jointMotion, wayOf } from './jointMotion.ts'
import type { JointOffer } from './offerJoints.ts'
import type { StandingPiece } from './standingPieces.ts'
import { settleJoint } from './settleJoint.ts'
import { turnEnds } from './turnEnds.ts'
import { offAxesMm } from './turnOver.ts'
import type { Verdict } from './types.ts'

/** A piece that hangs in the air. */
export interface LoosePiece {
  readonly partId: string
  readonly piece: number
  readonly isMirrored: boolean
}

/** A way for a loose piece to be joined to what stands. */
export interface Way {
  /** a stands, b is the loose piece. */
  readonly joint: Omit<Joint, 'id'>
  /** Where the loose piece's mesh goes on the aircraft. mm */
  readonly motion: RigidMap
  readonly verdict: Verdict
  readonly isDrawn: boolean
  /** As another piece of its part is joined already. */
  readonly isLikeAnother: boolean
  /** Two pieces lie on each other all over, as variants of one part do: hardly meant. */
  readonly isTwin: boolean
  /** Where on the standing piece: out of its face, in the axes of the aircraft. Unit length. */
  readonly out: Vec3
  /** Ways that differ only in which of equal patterns of one side is met have one key. */
  readonly key: string
  /** Joints to other standing pieces that the same place makes. */
  readonly also: readonly Omit<Joint, 'id'>[]
}

/** What is known of the frame while ways are looked for. */
export interface Meeting {
  readonly standing: readonly StandingPiece[]
  readonly offers: readonly JointOffer[]
  readonly joints: readonly Joint[]
  readonly shapes: Readonly<Record<string, JoinablePart>>
}

/** Two ways that put a piece within this of each other are one, or close a loop. mm */
const SAME_MM = 0.5
/** How large a piece is taken to be when two of its places are compared. mm */
const ABOUT_MM = 40
/** Axes of equal patterns come to lie within this of each other. mm */
const OFF_MM = 0.15
/** Cosine of what counts as on top. */
const UP = 0.9
/** Touching over more than this share of both their largest faces two parts are variants of one. */
const TWIN = 0.7

/**
 * Every way for the piece to meet what stands by holes nobody uses yet, the best first: as drawn,
 * as its like, closing most loops, nothing shut in or covered, most holes, where others are, on
 * top, then as the offers are ranked.
 */
export function waysFor(loose: LoosePiece, frame: Meeting): readonly Way[] {
  const found: Way[] = []
  sourcesOf(frame).forEach(({ joint: source, verdict, isDrawn, isLikeAnother }, place) => {
    for (const [turned, joint] of turnedTo(source, loose).entries()) {
      const own = spread(joint, frame.shapes[joint.a.partId])
      for (const stands of frame.standing) {
        if (stands.partId !== joint.a.partId || isSelf(stands, loose)) continue
        for (const each of own) {
          if ((stands.isMirrored !== loose.isMirrored) !== each.mirrored) continue
          const filled = {
            ...each,
            a: { ...each.a, piece: stands.piece },
            b: { ...each.b, piece: loose.piece },
          }
          if (isTaken(filled.a, frame.joints) || isTaken(filled.b, frame.joints)) continue
          const motion = after(stands.motion, jointMotion(filled))
          const out = mapDirection(stands.motion, wayOf(filled.a))
          const isTwin = areTwins(verdict.contactMm2, frame, stands.partId, loose.partId)
          // On top and below are told apart, whatever equal patterns are there.
          const side = out[2] > UP ? 'top' : out[2] < -UP ? 'below' : 'level'
          const key = `${stands.partId} ${place} ${turned} ${side}`
          const told = { verdict, isDrawn, isLikeAnother, isTwin, out, key }
          const way = { joint: filled, motion, also: [], ...told }
          if (!found.some((other) => isSameWay(way, other))) found.push(way)
        }
      }
    }
  })
  const closed = found.map((way) => ({ ...way, also: closing(way, found) }))
  const rank = new Map(closed.map((way) => [way, keysOf(way, frame.joints)]))
  const ranked = closed.toSorted((one, other) => {
    const [p, q] = [rank.get(one) ?? [], rank.get(other) ?? []]
    const place = p.findIndex((value, k) => Math.abs(value - (q[k] ?? 0)) > 1e-6)
    return place < 0 ? 0 : (q[place] ?? 0) - (p[place] ?? 0)
  })
  // The same place told from another of the pieces it meets is the same way.
  return ranked.filter(
    (way, i) => !ranked.slice(0, i).some((other) => isSamePlace(way.motion, other.motion)),
  )
}

/** The first of each key: what differs in more than which of equal patterns is met. */
export function distinctWays(ways: readonly Way[]): readonly Way[] {
  const keys = new Set<string>()
  return ways.filter(({ key }) => !keys.has(key) && keys.add(key))
}

/** Nothing speaks against a joint that stands elsewhere. */
const SOUND: Verdict = {
  clashMm3: 0,
  contactMm2: 0,
  outMm: 0,
  seated: 1,
  covered: 0,
  headsInside: 0,
}

/**
 * What may be repeated for a loose piece: the joints of its like that stand, then what is offered.
 */
function sourcesOf({ joints, offers }: Meeting) {
  return [
    ...joints
      .filter(({ kind, a }) => kind !== 'drawn' && a.bores.length > 0)
      .map((joint) => ({ joint, verdict: SOUND, isDrawn: false, isLikeAnother: true })),
    ...offers.map(({ joint, verdict, isDrawn }) => ({
      joint,
      verdict,
      isDrawn,
      isLikeAnother: false,
    })),
  ]
}

/**
 * The offer with the loose piece's part as its b; twice where both are that part and it matters.
 */
function turnedTo(joint: JointOffer['joint'], { partId }: LoosePiece) {
  const ways: JointOffer['joint'][] = []
  if (joint.b.partId === partId) ways.push(joint)
  if (joint.a.partId === partId) ways.push(turnEnds(joint))
  return ways
}

/** The joint at each of the equal patterns of a. */
function spread(
  joint: JointOffer['joint'],
  part: JoinablePart | undefined,
): readonly JointOffer['joint'][] {
  if (part === undefined) return [joint]
  const motion = jointMotion(joint)
  const more = equalPatterns(joint.a, part).flatMap(({ kind, found }) =>
    found.flatMap(({ map, end }): readonly JointOffer['joint'][] => {
      const there = { ...joint, a: end }
      if (kind === 'ring') return [settleJoint(there, after(map, motion))]
      const image = settleJoint({ ...there, mirrored: !joint.mirrored }, after(map, motion))
      // Across a plane by a piece of the same hand: only where holes alone settle how it lies.
      const isSettled = end.bores.length > 1 && end.face !== null
      return isSettled && offAxesMm(there) <= OFF_MM ? [image, there] : [image]
    }),
  )
  return [joint, ...more]
}

function isSelf(stands: StandingPiece, { partId, piece }: LoosePiece): boolean {
  return stands.partId === partId && stands.piece === piece
}

/** Whether one of an end's bores is in use already from the same side. */
function isTaken(end: JointEnd, joints: readonly Joint[]): boolean {
  const way = wayOf(end)
  return joints.some(({ a, b }) =>
    [a, b].some(
      (used) =>
        used.partId === end.partId &&
        used.piece === end.piece &&
        dot(wayOf(used), way) > 0 &&
        used.bores.some((bore) => end.bores.some((each) => isSameBore(bore, each))),
    ),
  )
}

function isSameWay(one: Way, other: Way): boolean {
  const [a, b] = [one.joint.a, other.joint.a]
  return (
    a.partId === b.partId &&
    a.piece === b.piece &&
    isSamePlace(one.motion, other.motion) &&
    isSameEnd(a, b)
  )
}

const ORIGIN: Vec3 = [0, 0, 0]

function isSamePlace(one: RigidMap, other: RigidMap): boolean {
  return apart(one, other, ORIGIN, ABOUT_MM) < SAME_MM
}

function areTwins(contactMm2: number, { shapes }: Meeting, one: string, other: string): boolean {
  const largest = (partId: string) => shapes[partId]?.faces[0]?.areaMm2 ?? Infinity
  return contactMm2 > TWIN * Math.max(largest(one), largest(other))
}

/** One joint to each further standing piece that a way's place makes: the one of most holes. */
function closing({ joint, motion }: Way, all: readonly Way[]): readonly Omit<Joint, 'id'>[] {
  const others = all
    // A post that happens to be as long as what lies between closes nothing.
    .filter((way) => !isParted(way) && way.joint.a !== joint.a)
    .filter((way) => isSamePlace(way.motion, motion))
    .map((way) => way.joint)
    .toSorted((one, other) => other.a.bores.length - one.a.bores.length)
  const met = [joint.a]
  return others.filter(({ a }) => {
    const isNew = !met.some(({ partId, piece }) => a.partId === partId && a.piece === piece)
    if (isNew) met.push(a)
    return isNew
  })
}

/** Offered across a gap, and not yet done so elsewhere. */
function isParted({ joint, isLikeAnother }: Pick<Way, 'joint' | 'isLikeAnother'>): boolean {
  return joint.gapMm > 0 && !isLikeAnother
}

function keysOf(
  { joint, verdict, isDrawn, isLikeAnother, isTwin, out, also }: Way,
  joints: readonly Joint[],
): readonly number[] {
  const way = wayOf(joint.a)
  const beside = joints.filter(
    ({ a }) =>
      a.partId === joint.a.partId && a.piece === joint.a.piece && dot(wayOf(a), way) > 0.99,
  )
  return [
    isDrawn ? 1 : 0,
    isParted({ joint, isLikeAnother }) ? 0 : 1,
    isTwin ? 0 : 1,
    isLikeAnother ? 1 : 0,
    also.length,
    -verdict.headsInside,
    -verdict.covered,
    joint.kind === 'faces' ? 2 : joint.kind === 'shaft' ? 1 : joint.a.bores.length,
    // On the side of the piece that others are on.
    beside.length,
    out[2] > UP ? 1 : 0,
    Math.round(10 * verdict.seated),
    joint.kind === 'bores' && joint.a.bores.length === 2 ? verdict.outMm : verdict.contactMm2,
  ]
}
