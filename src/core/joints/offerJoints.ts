import type { BoreMark, Joint, JointFace } from '../model/joints.ts'
import type { Mesh, Vec3 } from '../model/mesh.ts'
import { mapDirection, type RigidMap, unmapDirection, unmapPoint } from '../mesh/rigidMaps.ts'
import { dot, plus, times } from '../model/vectors.ts'
import { closedLoops } from './closedLoops.ts'
import { offerPairs } from './offerPairs.ts'
import { rankOffers, type Judged } from './rankOffers.ts'
import { shapeOf, type Shape } from './shapeOf.ts'
import type { Mouth, Verdict } from './types.ts'

/** A part whose joints are looked for. */
export interface MeetingPart {
  readonly partId: string
  /** In mm, in the part's own axes, faced outwards. */
  readonly mesh: Mesh
  /** How many of it fly: of two or more, one may meet another. */
  readonly pieces: number
}

/** A joint that could be made, and where it puts b. */
export interface JointOffer {
  readonly joint: Omit<Joint, 'id'>
  /** Where piece b goes in the axes of piece a. mm */
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

/**
 * Ways in which parts could be joined, the best first within each pair of parts; pairs in the order of
 * the parts. Nothing is taken: one hole alone is not offered unless the files put it so.
 */
export function offerJoints(parts: readonly MeetingPart[]): readonly JointOffer[] {
  const shapes = new Map<Mesh, Shape>()
  const shapeFor = (mesh: Mesh): Shape => {
    const known = shapes.get(mesh)
    if (known !== undefined) return known
    const made = shapeOf(mesh)
    shapes.set(mesh, made)
    return made
  }
  const meeting = parts.flatMap((a, i) =>
    parts
      .slice(i)
      // Of one piece alone none can meet another.
      .filter((b) => a !== b || a.pieces > 1)
      .map((b) => ({ a, b, one: shapeFor(a.mesh), other: shapeFor(b.mesh) })),
  )
  const pairs = offerPairs(meeting).map((judged, i) => ({
    ...meeting[i]!,
    judged: judged.slice(0, MOST_KEPT),
  }))
  const loops = closedLoops(pairs)
  return pairs.flatMap(({ a, b, one, other, judged }) =>
    rankOffers(judged, (each) => loops.get(each) ?? 0)
      .slice(0, MOST_OFFERS)
      .map((each) => offerOf(a, b, one, other, each, loops.get(each) ?? 0)),
  )
}

function offerOf(
  a: MeetingPart,
  b: MeetingPart,
  one: Shape,
  other: Shape,
  { candidate, verdict }: Judged,
  loops: number,
): JointOffer {
  const { kind, pairs, motion, direction, planeMm, isDrawn } = candidate
  const at = pairs[0] === undefined ? null : one.mouths[pairs[0][0]]!.atMm
  const onPlane = planeMm === null ? null : pointOn(direction, planeMm, at ?? one.centreMm)
  const marksA = pairs.map(([i]) => one.mouths[i]!)
  const marksB = pairs.map(([, j]) => other.mouths[j]!)
  return {
    joint: {
      a: {
        partId: a.partId,
        piece: 0,
        bores: marksA.map(({ bore }) => bore),
        face: onPlane && { pointMm: onPlane, normal: direction },
      },
      b: {
        partId: b.partId,
        piece: a === b ? 1 : 0,
        bores: marksB.map((mouth) => alongA(mouth, motion, marksA[0]!)),
        face: onPlane && faceOfB(motion, onPlane, direction),
      },
      kind,
      mirrored: false,
      turnDeg: 0,
      slideMm: 0,
      gapMm: 0,
      fastener: null,
    },
    motion,
    verdict,
    isDrawn,
    loops,
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
