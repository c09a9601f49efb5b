import { after, apart, inverse, type RigidMap } from '../mesh/rigidMaps.ts'
import { isSymmetry } from './bodyMoments.ts'
import { findCandidates } from './findCandidates.ts'
import { judgeApart, judgeOffer } from './judgeOffer.ts'
import type { Bought } from './matchRests.ts'
import { rankOffers, type Judged } from './rankOffers.ts'
import type { Shape } from './shapeOf.ts'
import type { Candidate } from './types.ts'

/** More ways than this for two parts to meet are not judged. */
const MOST_JUDGED = 24
/**
 * Nor more than this among all parts: two holes as far apart as two others are common among
 * strangers.
 */
const MOST_JUDGED_OF_ALL = { bores: 200, shaft: 20, faces: 20, rest: 60, apart: 40 } as const
/** Ways across a gap for two parts: either side of both, of patterns whose turns look alike. */
const MOST_APART = 4
/** Motions that lay a part within this of each other are one. mm */
const SAME_MM = 0.3

/** Two parts that may meet. */
export interface ShapePair {
  readonly one: Shape
  readonly other: Shape
  /** Of either that is no printed part. */
  readonly bought?: readonly [Bought | null, Bought | null]
}

/**
 * The sound ways for each of the pairs to meet, the best first. The most promising of all pairs are
 * judged first.
 */
export function offerPairs(pairs: readonly ShapePair[]): readonly (readonly Judged[])[] {
  const all = pairs.flatMap(({ one, other, bought }, pair) =>
    findCandidates(one, other, bought).map((candidate) => ({
      pair,
      candidate,
      promise: promise(one, other, candidate),
    })),
  )
  all.sort((a, b) => b.promise - a.promise)
  const chosen = pairs.map((): Candidate[] => [])
  const judged = pairs.map((): Judged[] => [])
  const chosenApart = pairs.map((): Candidate[] => [])
  const judgedApart = pairs.map((): Judged[] => [])
  const left: Record<string, number> = { ...MOST_JUDGED_OF_ALL }
  for (const { pair, candidate } of all) {
    const { one, other } = pairs[pair]!
    const { isDrawn, isApart = false } = candidate
    const known = (isApart ? chosenApart : chosen)[pair]!
    const kind = isApart ? 'apart' : candidate.isRest === true ? 'rest' : candidate.kind
    const room = left[kind] ?? 0
    if ((room === 0 && !isDrawn) || known.length === (isApart ? MOST_APART : MOST_JUDGED)) continue
    if (known.some(({ motion }) => layAlike(other, candidate.motion, motion))) continue
    known.push(candidate)
    if (!isDrawn) left[kind] = room - 1
    if (isApart) {
      const told = judgeApart(one, other, candidate)
      if (told !== null) judgedApart[pair]!.push({ candidate, ...told })
      continue
    }
    const verdict = judgeOffer(one, other, candidate)
    if (verdict === null) continue
    // A motor stands over the hole of its own shaft, a board over windows.
    const isBought =
      candidate.isRest !== true && pairs[pair]!.bought?.some((each) => each !== null) === true
    judged[pair]!.push({ candidate, verdict: isBought ? { ...verdict, covered: 0 } : verdict })
  }
  // Those that touch first.
  return judged.map((each, pair) => [...rankOffers(meant(each), () => 0), ...judgedApart[pair]!])
}

/** Where three holes meet, two that do are chance. */
function meant(judged: readonly Judged[]): readonly Judged[] {
  const hasThree = judged.some(({ candidate }) => candidate.pairs.length >= 3)
  return judged.filter(
    ({ candidate: { isDrawn, kind, pairs } }) =>
      isDrawn || !hasThree || kind !== 'bores' || pairs.length >= 3,
  )
}

/**
 * What can be told before judging: as drawn, then no head shut in, then holes, and how well their
 * axes meet.
 */
function promise(a: Shape, b: Shape, { isDrawn, kind, pairs, areaMm2, offMm }: Candidate): number {
  const sunk = pairs.some(([i, j]) => a.mouths[i]!.sunk || b.mouths[j]!.sunk)
  const holes = kind === 'shaft' ? 1 : kind === 'faces' ? 1.9 + areaMm2 / 1e6 : pairs.length
  return (isDrawn ? 1000 : 0) - (sunk ? 100 : 0) + holes - offMm
}

/** Whether two motions lay the part alike: the same, or apart by a turn that leaves it as it is. */
function layAlike(shape: Shape, one: RigidMap, other: RigidMap): boolean {
  if (apart(one, other, shape.centreMm, shape.radiusMm) < SAME_MM) return true
  return isSymmetry(shape.moments, after(inverse(other), one))
}
