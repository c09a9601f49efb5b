import type { Vec3 } from '../model/mesh.ts'
import { dot, lengthOf, minus } from '../model/vectors.ts'
import type { JoinablePart } from './equalPatterns.ts'
import { purposeOf, purposesFit } from './boresFit.ts'
import type { Mouth } from './types.ts'

/** Holes of two parts that would meet if they stood a little otherwise. */
export interface NearMiss {
  /** On which part, and how many holes of one width each has there. */
  readonly partId: string
  readonly holes: number
  readonly diameterMm: number
  /** Between two of the loose piece's, and between the two they nearly meet. */
  readonly apartMm: number
  readonly otherMm: number
  readonly offMm: number
}

/** Nearer than this they meet; further apart than that nobody meant them to. mm */
const MEETS_MM = 0.3
const FAR_MM = 8
/** Holes of one face stand in one plane, and are of one width, within this. mm */
const SAME_MM = 0.2
const MOST_HOLES = 12

interface HoleGroup {
  readonly mouths: readonly Mouth[]
  readonly diameterMm: number
  /** Between every two of them, rising. mm */
  readonly apartMm: readonly number[]
}

/**
 * The holes of a loose piece that come nearest to meeting holes of what stands; null where none
 * come near. Groups of as many holes go before two of many, then those that are less off.
 */
export function nearestMiss(
  loose: JoinablePart,
  standing: readonly { readonly partId: string; readonly part: JoinablePart }[],
): NearMiss | null {
  const own = groupsOf(loose.mouths)
  let best: NearMiss | null = null
  for (const { partId, part } of standing) {
    for (const there of groupsOf(part.mouths)) {
      for (const here of own) {
        const miss = missOf(here, there, partId)
        if (miss !== null && (best === null || isNearer(miss, best))) best = miss
      }
    }
  }
  return best
}

function isNearer(one: NearMiss, other: NearMiss): boolean {
  return one.holes === other.holes ? one.offMm < other.offMm : one.holes > other.holes
}

function missOf(here: HoleGroup, there: HoleGroup, partId: string): NearMiss | null {
  const [first, second] = [here.mouths[0], there.mouths[0]]
  if (first === undefined || second === undefined) return null
  if (!purposesFit(purposeOf(first.bore), purposeOf(second.bore))) return null
  const { diameterMm } = here
  const told = (holes: number, apartMm: number, otherMm: number): NearMiss | null => {
    const offMm = Math.abs(apartMm - otherMm)
    if (offMm <= MEETS_MM || offMm > FAR_MM) return null
    return { partId, holes, diameterMm, apartMm, otherMm, offMm }
  }
  if (here.mouths.length === there.mouths.length && here.mouths.length > 2) {
    const offs = here.apartMm.map((mm, i) => Math.abs(mm - (there.apartMm[i] ?? Infinity)))
    if (Math.max(...offs) > FAR_MM) return null
    // The side of a square says more than its diagonal.
    const at = offs.findIndex((off) => off > MEETS_MM)
    return at < 0 ? null : told(here.mouths.length, here.apartMm[at]!, there.apartMm[at]!)
  }
  let best: NearMiss | null = null
  for (const one of here.apartMm) {
    for (const other of there.apartMm) {
      if (Math.abs(one - other) <= MEETS_MM) return null
      const miss = told(2, one, other)
      if (miss !== null && (best === null || miss.offMm < best.offMm)) best = miss
    }
  }
  return best
}

/** Holes of one width that open to one side in one plane. */
function groupsOf(mouths: readonly Mouth[]): readonly HoleGroup[] {
  const groups: Mouth[][] = []
  for (const mouth of mouths) {
    if (mouth.bore.kind !== 'bore') continue
    const group = groups.find(([first]) => first !== undefined && areAlike(first, mouth))
    if (group === undefined) groups.push([mouth])
    else if (group.length < MOST_HOLES) group.push(mouth)
  }
  return groups
    .filter(({ length }) => length > 1)
    .map((group) => ({
      mouths: group,
      diameterMm: group[0]?.bore.diameterMm ?? 0,
      apartMm: spacings(group.map(({ atMm }) => atMm)),
    }))
}

function areAlike(one: Mouth, other: Mouth): boolean {
  return (
    dot(one.out, other.out) > 0.999 &&
    Math.abs(dot(minus(one.atMm, other.atMm), one.out)) < SAME_MM &&
    Math.abs(one.bore.diameterMm - other.bore.diameterMm) < SAME_MM
  )
}

function spacings(points: readonly Vec3[]): readonly number[] {
  return points
    .flatMap((one, i) => points.slice(i + 1).map((other) => lengthOf(minus(one, other))))
    .toSorted((a, b) => a - b)
}
