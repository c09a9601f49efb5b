import { after, type RigidMap } from '../mesh/rigidMaps.ts'
import type { Joint } from '../model/joints.ts'
import { equalPatterns, isSameBore } from './equalPatterns.ts'
import { jointMotion } from './jointMotion.ts'
import { settleJoint } from './settleJoint.ts'
import { offAxesMm } from './turnOver.ts'
import { waysFor, type LoosePiece, type Meeting, type Way } from './waysFor.ts'

/** What one press joins: the chosen way, and the same again elsewhere. */
export interface Repeat {
  readonly kind: 'once' | 'mirror' | 'ring' | 'all'
  /** Pieces that would be joined were every hole and every piece there, the chosen one too. */
  readonly wanted: number
  readonly placed: readonly { readonly joint: Omit<Joint, 'id'>; readonly motion: RigidMap }[]
  readonly missing: 'holes' | 'pieces' | null
}

/** Axes of equal patterns come to lie within this of each other. mm */
const OFF_MM = 0.15
/** So many rings are told at most. */
const MOST_RINGS = 2

/**
 * How a way may be repeated with further loose pieces of the same part: not at all, mirrored, round
 * a ring, and at every equal pattern that is left.
 *
 * @param others loose pieces of the same part, without the chosen one.
 */
export function repeatsOf(
  way: Way,
  others: readonly LoosePiece[],
  frame: Meeting,
): readonly Repeat[] {
  const { joint, motion } = way
  const first = { joint, motion }
  const once: Repeat = { kind: 'once', wanted: 1, placed: [first], missing: null }
  const stands = frame.standing.find(
    ({ partId, piece }) => partId === joint.a.partId && piece === joint.a.piece,
  )
  const shape = frame.shapes[joint.a.partId]
  if (stands === undefined || shape === undefined || others.length === 0) return [once]
  const own = jointMotion(joint)
  const base = stands.motion
  const patterns = equalPatterns(joint.a, shape).map(({ kind, wanted, found }): Repeat => {
    const left = [...others]
    const placed = [first]
    let lacksPieces = false
    for (const { map, end } of found) {
      if (placed.some((each) => sharesBore(each.joint, end))) continue
      const at = left.findIndex(({ isMirrored }) => {
        const mirrored = isMirrored !== stands.isMirrored
        return imageJoint(joint, end, map, kind, mirrored, own) !== null
      })
      const piece = left[at]
      if (piece === undefined) {
        lacksPieces = true
        continue
      }
      left.splice(at, 1)
      const mirrored = piece.isMirrored !== stands.isMirrored
      const image = imageJoint(joint, end, map, kind, mirrored, own)
      if (image === null) continue
      const next = { ...image, b: { ...image.b, piece: piece.piece } }
      placed.push({ joint: next, motion: after(base, jointMotion(next)) })
    }
    const missing = placed.length === wanted ? null : lacksPieces ? 'pieces' : 'holes'
    return { kind, wanted, placed, missing }
  })
  const more = patterns.filter(({ placed }) => placed.length > 1)
  const mirror = more.find(({ kind }) => kind === 'mirror')
  const rings = more
    .filter(({ kind, wanted }) => kind === 'ring' && wanted > 2)
    .filter((ring, i, all) => all.findIndex(({ wanted }) => wanted === ring.wanted) === i)
  const half = more.find(({ kind, wanted }) => kind === 'ring' && wanted === 2)
  const told = [mirror, ...(rings.length === 0 ? [half] : rings.slice(0, MOST_RINGS))]
  return [once, ...told.flatMap((each) => each ?? []), ...everyOne(way, others, frame)]
}

/**
 * The joint at an image of its holes by a piece of that hand; null where it would not lie there.
 */
function imageJoint(
  joint: Way['joint'],
  end: Way['joint']['a'],
  map: RigidMap,
  kind: 'ring' | 'mirror',
  mirrored: boolean,
  own: RigidMap,
): Way['joint'] | null {
  const there = { ...joint, a: end, mirrored }
  const isImage = (kind === 'mirror') === (mirrored !== joint.mirrored)
  if (isImage) return settleJoint(there, after(map, own))
  const isSettled = end.bores.length > 1 && end.face !== null
  return isSettled && offAxesMm(there) <= OFF_MM ? there : null
}

function sharesBore({ a }: Way['joint'], end: Way['joint']['a']): boolean {
  return (
    a.partId === end.partId &&
    a.piece === end.piece &&
    a.bores.some((bore) => end.bores.some((each) => isSameBore(bore, each)))
  )
}

/** The way wherever else it fits, as long as there are pieces. */
function everyOne(way: Way, others: readonly LoosePiece[], frame: Meeting): readonly Repeat[] {
  const { joint, motion } = way
  const placed = [{ joint, motion }]
  for (const loose of others) {
    const next = waysFor(loose, frame).find(
      ({ key, joint: other }) =>
        key === way.key && !placed.some((each) => sharesBore(each.joint, other.a)),
    )
    if (next !== undefined) placed.push({ joint: next.joint, motion: next.motion })
  }
  const isMore = placed.length > 1
  return isMore ? [{ kind: 'all', wanted: placed.length, placed, missing: null }] : []
}
