import { JOINT_BORES_MOST } from '../data/limits.ts'
import type { ItemBody } from '../model/aircraft.ts'
import type { BoreMark, Joint, JointFace, JointFastener } from '../model/joints.ts'
import type { Mesh, Vec3 } from '../model/mesh.ts'
import {
  after,
  apart,
  inverse,
  mapDirection,
  mapPoint,
  type RigidMap,
  STAY,
  unmapDirection,
  unmapPoint,
} from '../mesh/rigidMaps.ts'
import { dot, plus, times } from '../model/vectors.ts'
import { isSymmetry } from './bodyMoments.ts'
import { closedLoops } from './closedLoops.ts'
import { fastenerFor } from './fastenerFor.ts'
import { jointMotion, MIRROR_X } from './jointMotion.ts'
import type { Bought } from './matchRests.ts'
import { movedApart } from './judgeOffer.ts'
import { offerPairs } from './offerPairs.ts'
import { rankOffers, type Judged } from './rankOffers.ts'
import { settleJoint } from './settleJoint.ts'
import { shapeOf, type Shape } from './shapeOf.ts'
import { turnedOver } from '../mesh/turnedOver.ts'
import type { Mouth, Verdict } from './types.ts'

/** A part whose joints are looked for. */
export interface MeetingPart {
  readonly partId: string
  /** In mm, in the part's own axes, faced outwards. */
  readonly mesh: Mesh
  /** How many of it fly: of two or more, one may meet another. */
  readonly pieces: number
  /** How many of them, the last ones, are mirror images; left out, none. */
  readonly mirrored?: number
  /** Of something bought. */
  readonly body?: ItemBody
}

/** A joint that could be made, and where it puts b. */
export interface JointOffer {
  readonly joint: Omit<Joint, 'id'>
  /** Where the mesh of b goes in the axes of a, mirror image and all. mm */
  readonly motion: RigidMap
  readonly verdict: Verdict
  /** The files already put both so. */
  readonly isDrawn: boolean
  /** Ways round over a third part that come back to the same place. */
  readonly loops: number
}

/** Ways for two parts to meet that are offered; the eye chooses among a handful. */
const MOST_OFFERS = 5
/** Ways kept while it is not known which of them close a loop. */
const MOST_KEPT = 8

/** The joint puts b within this of where it was matched, or it is none. mm */
const SAME_MM = 0.3

/** What is found on a mesh, or on its mirror image. */
export type ShapeFor = (mesh: Mesh, isMirrored?: boolean) => Shape

/** Looks at each mesh once. */
export function keepShapes(): ShapeFor {
  const kept = [new Map<Mesh, Shape>(), new Map<Mesh, Shape>()] as const
  return (mesh, isMirrored = false) => {
    const shapes = kept[isMirrored ? 1 : 0]
    const known = shapes.get(mesh)
    if (known !== undefined) return known
    const made = shapeOf(isMirrored ? mirrorImage(mesh) : mesh)
    shapes.set(mesh, made)
    return made
  }
}

/** Two parts, and whether one of two pieces that may meet is a mirror image and the other not. */
interface Meeting {
  readonly a: MeetingPart
  readonly b: MeetingPart
  readonly isMirrored: boolean
  readonly one: Shape
  /** Of the mirror image of b's mesh where `isMirrored`. */
  readonly other: Shape
  readonly bought: readonly [Bought | null, Bought | null]
}

/**
 * Ways in which parts could be joined, the best first within each pair of parts; pairs in the order
 * of the parts. Nothing is taken: one hole alone is not offered unless the files put it so. A piece
 * and the mirror image of another meet in ways of their own, which follow those of like pieces.
 */
export function offerJoints(
  parts: readonly MeetingPart[],
  shapeFor: ShapeFor = keepShapes(),
): readonly JointOffer[] {
  const meeting = parts.flatMap((a, i) =>
    parts.slice(i).flatMap((b) =>
      [false, true]
        .filter(
          (isMirrored) =>
            !(a === b && a.body !== undefined) && piecesThatMeet(a, b, isMirrored) !== null,
        )
        .map((isMirrored): Meeting => {
          const [one, other] = [shapeFor(a.mesh), shapeFor(b.mesh, isMirrored)]
          return { a, b, isMirrored, one, other, bought: [boughtOf(a), boughtOf(b)] }
        }),
    ),
  )
  const pairs = offerPairs(meeting).map((judged, i) => ({
    ...meeting[i]!,
    mirror: meeting[i]!.isMirrored ? MIRROR_X : STAY,
    judged: judged.filter(({ gapMm }) => gapMm === undefined).slice(0, MOST_KEPT),
    parted: judged.filter(({ gapMm }) => gapMm !== undefined),
  }))
  const loops = closedLoops(pairs)
  return pairs.flatMap(({ judged, parted, ...each }) => {
    const touching = distinctFirst(
      rankOffers(judged, (one) => loops.get(one) ?? 0),
      each,
    )
      .flatMap((one) => offerOf(each, one, loops.get(one) ?? 0) ?? [])
      .slice(0, MOST_OFFERS)
    return [...touching, ...parted.flatMap((one) => offerOf(each, one, 0) ?? [])]
  })
}

function boughtOf({ body }: MeetingPart): Bought | null {
  return body === undefined ? null : { kind: body.kind, isBolted: body.holes !== null }
}

/** Those that a turn of a makes of one before come last. */
function distinctFirst(ranked: readonly Judged[], { one }: Meeting): readonly Judged[] {
  const again = new Set<Judged>()
  ranked.forEach((each, i) => {
    const back = inverse(each.candidate.motion)
    const isAgain = ranked.slice(0, i).some((before) => {
      const isSameKind = before.candidate.pairs.length === each.candidate.pairs.length
      return isSameKind && isSymmetry(one.moments, after(before.candidate.motion, back))
    })
    if (isAgain) again.add(each)
  })
  return [...ranked.filter((each) => !again.has(each)), ...again]
}

/**
 * The first pieces of both that are alike in their hand, or of either hand; null where there are
 * none.
 */
function piecesThatMeet(
  a: MeetingPart,
  b: MeetingPart,
  isMirrored: boolean,
): readonly [a: number, b: number] | null {
  const like = ({ mirrored = 0, pieces }: MeetingPart, isImage: boolean) =>
    Array.from({ length: Math.min(2, isImage ? mirrored : pieces - mirrored) }, (_, k) =>
      isImage ? pieces - mirrored + k : k,
    )
  for (const isImage of [false, true]) {
    for (const first of like(a, isImage)) {
      const second = like(b, isImage !== isMirrored).find((each) => a !== b || each !== first)
      if (second !== undefined) return [first, second]
    }
  }
  return null
}

function mirrorImage({ positions, indices }: Mesh): Mesh {
  const mirrored = Float64Array.from(positions, (value, i) => (i % 3 === 0 ? -value : value))
  return turnedOver({ positions: mirrored, indices })
}

/**
 * Null where the joint would not put b where it was matched: faces and axes tell too little of it.
 */
function offerOf(
  { a, b, isMirrored, one, other }: Meeting,
  { candidate: touching, verdict, gapMm = 0 }: Judged,
  loops: number,
): JointOffer | null {
  const candidate = gapMm === 0 ? touching : movedApart(touching, gapMm)
  const { kind, direction, planeMm, isDrawn } = candidate
  const pairs = candidate.pairs.slice(0, JOINT_BORES_MOST)
  const mirror = isMirrored ? MIRROR_X : STAY
  const at = pairs[0] === undefined ? null : one.mouths[pairs[0][0]]!.atMm
  const onPlane = planeMm === null ? null : pointOn(direction, planeMm, at ?? one.centreMm)
  const marksA = pairs.map(([i]) => one.mouths[i]!.bore)
  const marksB = pairs.map(([, j]) =>
    asMesh(mirror, alongA(other.mouths[j]!, candidate.motion, one.mouths[pairs[0]![0]]!)),
  )
  const motion = after(candidate.motion, mirror)
  const [pieceA, pieceB] = piecesThatMeet(a, b, isMirrored)!
  const joint = settleJoint(
    {
      a: {
        partId: a.partId,
        piece: pieceA,
        bores: marksA,
        face: onPlane && { pointMm: onPlane, normal: direction },
      },
      b: {
        partId: b.partId,
        piece: pieceB,
        bores: marksB,
        face: onPlane && faceOfB(motion, plus(onPlane, times(direction, gapMm)), direction),
      },
      kind,
      mirrored: isMirrored,
      turnDeg: 0,
      slideMm: 0,
      gapMm,
      fastener: gapMm === 0 ? fastenerFor(marksA, marksB) : postFor(marksA, marksB),
    },
    motion,
  )
  const middle = mapPoint(mirror, other.centreMm)
  if (apart(jointMotion(joint), motion, middle, other.radiusMm) > SAME_MM) return null
  return { joint, motion, verdict, isDrawn, loops }
}

/** Posts of the thread whose screws pass both ends. */
function postFor(a: readonly BoreMark[], b: readonly BoreMark[]): JointFastener | null {
  const bolt = fastenerFor(a, b, ['nut'])
  return bolt && { ...bolt, end: 'post' }
}

/** A mark found on the mirror image of a mesh, on the mesh. */
function asMesh(mirror: RigidMap, bore: BoreMark): BoreMark {
  return {
    ...bore,
    centreMm: mapPoint(mirror, bore.centreMm),
    axis: mapDirection(mirror, bore.axis),
  }
}

const pointOn = (normal: Vec3, height: number, near: Vec3): Vec3 =>
  plus(near, times(normal, height - dot(near, normal)))

function faceOfB(motion: RigidMap, point: Vec3, normal: Vec3): JointFace {
  return { pointMm: unmapPoint(motion, point), normal: times(unmapDirection(motion, normal), -1) }
}

/** b's mark with its axis the way of a's, as joints without a face want it. */
function alongA({ bore }: Mouth, motion: RigidMap, first: Mouth): BoreMark {
  if (dot(mapDirection(motion, bore.axis), first.bore.axis) >= 0) return bore
  return {
    ...bore,
    axis: times(bore.axis, -1),
    openLow: bore.openHigh,
    openHigh: bore.openLow,
  }
}
