import type { Vec3 } from '../model/mesh.ts'
import { apart, STAY } from '../mesh/rigidMaps.ts'
import { dot, lengthOf, minus } from '../model/vectors.ts'
import { boresFit } from './boresFit.ts'
import { fastenerFor } from './fastenerFor.ts'
import { LEAST_APART, matchBores } from './matchBores.ts'
import { matchFaces } from './matchFaces.ts'
import { canRest, matchRests, type Bought } from './matchRests.ts'
import { matchShafts } from './matchShafts.ts'
import type { Shape } from './shapeOf.ts'
import type { BoreMatch, Candidate, Mouth } from './types.ts'

/** Boxes further apart than this do not meet as drawn; holes and faces nearer than this do. mm */
const MEETS_MM = 0.3
const BOX_GAP_MM = 0.05
/**
 * Two holes as far apart as two others are common; of two faces' holes so many ways are looked at.
 */
const MOST_TWOS = 8

/**
 * The ways two parts could meet by what is on them: as drawn, by holes, by shafts, by equal faces;
 * a bought thing by its holes, its shaft, or lying on a face. None is judged; many fit nothing.
 *
 * @param bought of either that is no printed part.
 */
export function findCandidates(
  a: Shape,
  b: Shape,
  bought: readonly [a: Bought | null, b: Bought | null] = [null, null],
): readonly Candidate[] {
  const matches = matchBores(a.patterns, b.patterns, MOST_TWOS)
  const byBores = [
    ...matches.filter(({ isNearMiss }) => !isNearMiss).map((match) => byMatch(a, match)),
    ...matches.filter((match) => canBePosted(a, b, match)).map((match) => apartBy(a, match)),
  ]
  const [isA, isB] = bought.map((each) => each !== null) as [boolean, boolean]
  if (isA || isB) {
    const hasProp = bought.some((each) => each?.kind === 'prop')
    const shafts = hasProp ? matchShafts(a, b).map((each) => ({ ...each, isDrawn: false })) : []
    return [...byBores, ...shafts, ...(canRest(...bought) ? matchRests(a, b) : [])]
  }
  const byFaces = matchFaces(a.faces, b.faces).map(({ a: face, motion }): Candidate => ({
    kind: 'faces',
    pairs: [],
    motion,
    direction: face.normal,
    planeMm: dot(face.centreMm, face.normal),
    offMm: 0,
    areaMm2: face.areaMm2,
    isDrawn: false,
  }))
  const found: readonly Candidate[] = [...byBores, ...matchShafts(a, b), ...byFaces].map(
    (each) => ({
      ...each,
      isDrawn: each.isApart !== true && apart(each.motion, STAY, b.centreMm, b.radiusMm) < MEETS_MM,
    }),
  )
  return found.some(({ isDrawn }) => isDrawn) ? found : [...asDrawn(a, b), ...found]
}

/** Whether one thread's posts could stand at all of its holes: their screws pass both ends. */
function canBePosted(a: Shape, b: Shape, { pairs }: BoreMatch): boolean {
  if (pairs.length < LEAST_APART) return false
  const marks = (shape: Shape, end: 0 | 1) => pairs.map((pair) => shape.mouths[pair[end]]!.bore)
  return fastenerFor(marks(a, 0), marks(b, 1), ['nut']) !== null
}

function apartBy(a: Shape, match: BoreMatch): Candidate {
  return { ...byMatch(a, match), isApart: true }
}

function byMatch(a: Shape, { pairs, motion, offMm }: BoreMatch): Candidate {
  const { out } = a.mouths[pairs[0]![0]]!
  const heights = pairs.map(([i]) => dot(a.mouths[i]!.atMm, out))
  return {
    kind: 'bores',
    pairs,
    motion,
    direction: out,
    planeMm: Math.max(...heights),
    offMm,
    areaMm2: 0,
    isDrawn: false,
  }
}

/**
 * The files may put both in place, where they meet by one hole or by no more than lying on each
 * other.
 */
function asDrawn(a: Shape, b: Shape): readonly Candidate[] {
  const isNear = ([0, 1, 2] as const).every(
    (k) => a.box.min[k] <= b.box.max[k] + BOX_GAP_MM && b.box.min[k] <= a.box.max[k] + BOX_GAP_MM,
  )
  if (!isNear) return []
  const common = { kind: 'drawn', motion: STAY, offMm: 0, areaMm2: 0, isDrawn: true } as const
  const pairs = a.mouths.flatMap((one, i) =>
    b.mouths.flatMap((other, j) => (meetStill(one, other) ? [[i, j] as const] : [])),
  )
  if (pairs.length > 0) {
    const { out, atMm } = a.mouths[pairs[0]![0]]!
    return [{ ...common, kind: 'bores', pairs, direction: out, planeMm: dot(atMm, out) }]
  }
  return [{ ...common, pairs: [], direction: thinnest(a, b), planeMm: null }]
}

/** Across the thinnest side of the box that both have in common: likely where they touch. */
function thinnest(a: Shape, b: Shape): Vec3 {
  const [x, y, z] = ([0, 1, 2] as const).map(
    (k) => Math.min(a.box.max[k], b.box.max[k]) - Math.max(a.box.min[k], b.box.min[k]),
  ) as [number, number, number]
  if (z <= x && z <= y) return [0, 0, 1]
  return y <= x ? [0, 1, 0] : [1, 0, 0]
}

function meetStill(a: Mouth, b: Mouth): boolean {
  return (
    lengthOf(minus(a.atMm, b.atMm)) < MEETS_MM &&
    dot(a.out, b.out) < -0.999 &&
    boresFit(a.bore, b.bore)
  )
}
