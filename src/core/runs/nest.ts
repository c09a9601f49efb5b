import type { Spot } from '../model/runs.ts'
import { layPieces, type Joins, type Rule, type TurnedPiece } from './layPieces.ts'
import { fitsTurned, stampsOf } from './stamp.ts'
import { mirrorOutline } from './mirror.ts'
import { turnedBox } from './hull.ts'
import type { Bed, LaidPart, PieceOutline } from './types.ts'

/*
 * Beds of 220 × 220 mm, 2 mm apart, beside a kept packer of rectangles (maxrects-packer 2.7.4) that is
 * given each piece's smallest box; share of bed is what stands on it, by the shadow. `npm run beds`:
 *
 *                                    pieces  least by area  rectangles   outlines
 *   Sandpiper once                       19              1   4 (17 %)    2 (35 %)
 *   Sandpiper four times                 76              3  13 (22 %)    5 (56 %)
 *   Tern once                            10              1   1 (34 %)    1 (34 %)
 *   Tern twice                           20              1   2 (34 %)    2 (34 %)
 *   angles of 90 × 60, 12 wide           40              2   6 (24 %)    4 (36 %)
 *   tapered arms of 160                  24              3   6 (40 %)    4 (60 %)
 *   6 rings of 140, 24 discs of 40       30              2   6 (25 %)    6 (25 %)
 *
 * 0.6 to 4 s each on two shared, busy cores. Tried and slower: every row looked at anew for every
 * piece, 44 s for the 76 pieces; a stamp's rows one after the other and its cells turned through calls
 * and lists, 1.7 s of processor time for the Sandpiper once where it now takes 0.5.
 */

/** Passes beyond the first few orders; each changes the order that is best so far a little. */
const PASSES = 80
/** Pieces laid in all; past them the best so far stands. */
const MOST_LAID = 400

const RULES: readonly Rule[] = ['low', 'corner', 'ends']

/** What of a bed may be used. */
function usableOf({ widthMm, depthMm, marginMm }: Bed): readonly [number, number] {
  return [Math.max(0, widthMm - 2 * marginMm), Math.max(0, depthMm - 2 * marginMm)]
}

export interface NestLimits {
  readonly gapMm: number
  readonly joins?: Joins
  readonly passes?: number
}

/**
 * Lays pieces on as few beds as it finds, spots in mm from the bed's corner: largest first, by four
 * orders and two rules, then with pieces swapped at random (always the same numbers) while that
 * helps. Every part must go on the bed at some turn, see `unfitOf`.
 */
export function nest(
  parts: readonly LaidPart[],
  bed: Bed,
  { gapMm, joins = () => true, passes = PASSES }: NestLimits,
): readonly (readonly Spot[])[] {
  const usableMm = usableOf(bed)
  const pieces = parts.flatMap(({ id, count, mirrored = 0, outline, brimMm }): Sized[] => {
    const sizes = sizesOf(outline)
    const pieceOf = (own: PieceOutline, isMirror: boolean): Sized => ({
      partId: id,
      mirrored: isMirror,
      stamps: stampsOf(own, brimMm, usableMm),
      ...sizes,
    })
    const plain = pieceOf(outline, false)
    const mirror = mirrored > 0 ? pieceOf(mirrorOutline(outline), true) : plain
    return Array.from({ length: count }, (_, i) => (i < mirrored ? mirror : plain))
  })
  if (pieces.length === 0) return []
  const areaOf = new Map(parts.map(({ id, outline }) => [id, outline.areaMm2]))
  // Fewer beds first; of as many the one whose last beds hold least, since that is nearest to one
  // less.
  const worth = (beds: readonly (readonly Spot[])[]): number => {
    const areas = beds
      .map((spots) => spots.reduce((sum, { partId }) => sum + (areaOf.get(partId) ?? 0), 0))
      .toSorted((a, b) => b - a)
    const bedMm2 = usableMm[0] * usableMm[1]
    return beds.length - areas.reduce((sum, area, i) => sum + (area / bedMm2) * 0.5 ** i, 0) / 4
  }
  let best: { beds: readonly (readonly Spot[])[]; order: readonly Sized[] } | null = null
  let least = Infinity
  // No bed holds more than itself.
  const allMm2 = parts.reduce((sum, { count, outline }) => sum + count * outline.areaMm2, 0)
  const bound = Math.max(1, Math.ceil((0.98 * allMm2) / Math.max(1, usableMm[0] * usableMm[1])))
  let laid = 0
  const attempt = (order: readonly Sized[], rule: Rule): void => {
    if (laid > 0 && laid + order.length > MOST_LAID) return
    laid += order.length
    // With more beds than the best it cannot win: what its last beds hold makes up for half a bed at
    // most, see `worth`.
    const beds = layPieces(order, usableMm, gapMm, rule, joins, bedsOf(best))
    if (beds === null) return
    const cost = worth(beds)
    if (cost < least - 1e-9) [least, best] = [cost, { beds, order }]
  }
  const keys = ['areaMm2', 'longMm', 'boxMm2', 'shortMm'] as const
  for (const key of keys) {
    const order = pieces.toSorted((a, b) => b[key] - a[key])
    for (const rule of RULES) {
      attempt(order, rule)
      if (bedsOf(best) <= bound) return centred(best, bed, parts)
    }
  }
  const random = sequence(pieces.length)
  for (let pass = 0; pass < passes && bedsOf(best) > bound && pieces.length > 2; pass++) {
    const order: Sized[] = [...((best as Best | null)?.order ?? pieces)]
    for (let swap = 0; swap <= pass % 2; swap++) {
      const i = Math.floor(random() * order.length)
      const j = Math.floor(random() * order.length)
      const [a, b] = [order[i], order[j]]
      if (a !== undefined && b !== undefined) [order[i], order[j]] = [b, a]
    }
    // Some pieces with half their turns only: the first place they find is not always the best one.
    const picky = pass % 4 < 2 ? order : order.map((piece) => fewerTurns(piece, random))
    attempt(picky, RULES[pass % RULES.length] ?? 'low')
  }
  return centred(best, bed, parts)
}

type Best = {
  readonly beds: readonly (readonly Spot[])[]
  readonly order: readonly Sized[]
}

interface Sized extends TurnedPiece {
  readonly areaMm2: number
  readonly longMm: number
  readonly shortMm: number
  readonly boxMm2: number
}

function bedsOf(best: Best | null): number {
  return best?.beds.length ?? Infinity
}

function sizesOf({ hullMm, areaMm2 }: PieceOutline) {
  let [longMm, shortMm, boxMm2] = [0, 0, Infinity]
  for (let deg = 0; deg < 90; deg += 3) {
    const { widthMm, depthMm } = turnedBox(hullMm, deg)
    if (widthMm * depthMm >= boxMm2) continue
    boxMm2 = widthMm * depthMm
    longMm = Math.max(widthMm, depthMm)
    shortMm = Math.min(widthMm, depthMm)
  }
  return { areaMm2, longMm, shortMm, boxMm2 }
}

/** Each bed's pieces as one, moved to its middle, from the bed's own corner. */
function centred(
  best: Best | null,
  bed: Bed,
  parts: readonly LaidPart[],
): readonly (readonly Spot[])[] {
  const byId = new Map(parts.map((part) => [part.id, part]))
  return (best?.beds ?? []).map((spots) => {
    let [left, low, right, top] = [Infinity, Infinity, -Infinity, -Infinity]
    for (const { partId, xMm, yMm, turnDeg, mirrored } of spots) {
      const part = byId.get(partId)
      if (part === undefined) continue
      const { brimMm, outline } = part
      const own = mirrored === true ? mirrorOutline(outline) : outline
      const box = turnedBox(own.hullMm, turnDeg)
      left = Math.min(left, xMm + box.minX - brimMm)
      right = Math.max(right, xMm + box.minX + box.widthMm + brimMm)
      low = Math.min(low, yMm + box.minY - brimMm)
      top = Math.max(top, yMm + box.minY + box.depthMm + brimMm)
    }
    const byX = bed.widthMm / 2 - (left + right) / 2
    const byY = bed.depthMm / 2 - (low + top) / 2
    return spots.map((spot) => ({ ...spot, xMm: spot.xMm + byX, yMm: spot.yMm + byY }))
  })
}

function fewerTurns(piece: Sized, random: () => number): Sized {
  const stamps = piece.stamps.filter(() => random() < 0.5)
  return stamps.length === 0 ? piece : { ...piece, stamps }
}

/** Park–Miller numbers, 0 to 1: the same ones every time. */
function sequence(seed: number): () => number {
  let state = (seed % 2147483646) + 1
  return () => {
    state = (state * 16807) % 2147483647
    return state / 2147483647
  }
}

/** Whether a piece goes on a bed at some turn, by its exact hull. */
export function goesOn(
  outline: Pick<PieceOutline, 'hullMm' | 'heightMm'>,
  brimMm: number,
  bed: Bed,
): boolean {
  if (outline.heightMm > bed.heightMm + 0.01) return false
  const usable = usableOf(bed)
  for (let deg = 0; deg < 180; deg += 0.5) {
    if (fitsTurned(outline.hullMm, brimMm, usable, deg)) return true
  }
  return false
}
