import { flatAxes } from '../mesh/holes/fitCircle.ts'
import type { Vec3 } from '../model/mesh.ts'
import { mapAxes } from '../mesh/rigidMaps.ts'
import { dot, lengthOf, plus, times, unit } from '../model/vectors.ts'
import { purposeOf, purposesFit, type BorePurpose } from './boresFit.ts'
import type { BoreMatch, Mouth } from './types.ts'

/**
 * Distances between holes of both parts agree within this. mm (tried: 0.1 to 0.5 offers the same)
 */
const SPACING_MM = 0.3
/** Axes that are meant to meet are off by no more. mm */
const OFF_MM = SPACING_MM / 2
/**
 * Holes that come to lie nearer than this, and still do not meet, were meant for something else. mm
 */
const NEAR_MISS_MM = 1
/** Two holes nearer than this settle no turn. mm */
const LEAST_SPACING_MM = 3
/** Cosine of one direction: within 0.8°. */
const ONE_WAY = 0.9999
/** Fewer holes than this that meet across a gap are chance. */
export const LEAST_APART = 4
/** Of more holes in one direction (a grille) only the first are looked at. */
const MOST_MOUTHS = 48

/** Mouths of a part that open one way, as they lie across it. Arrays have one entry a mouth. */
export interface Pattern {
  readonly mouths: readonly Mouth[]
  /** Unit length. */
  readonly out: Vec3
  /** Places in `mouths`. */
  readonly members: readonly number[]
  readonly purposes: readonly BorePurpose[]
  /** Seen along `out`, and seen along it from the other side. */
  readonly front: Spots
  readonly back: Spots
  /** Every two of them both ways round, the nearest first. */
  readonly spacings: readonly { readonly i: number; readonly k: number; readonly mm: number }[]
}

/** Along the flat axes of a direction, and along it. mm */
interface Spots {
  readonly xs: Float64Array
  readonly ys: Float64Array
  readonly heights: Float64Array
}

/** Mouths that open the same way, together. */
export function groupMouths(mouths: readonly Mouth[]): readonly Pattern[] {
  const groups: { sum: Vec3; members: number[] }[] = []
  mouths.forEach(({ out }, index) => {
    const group = groups.find(({ sum }) => dot(sum, out) > ONE_WAY * lengthOf(sum))
    if (group === undefined) groups.push({ sum: out, members: [index] })
    else if (group.members.length < MOST_MOUTHS) {
      group.sum = plus(group.sum, out)
      group.members.push(index)
    }
  })
  return groups.map(({ sum, members }) => {
    const out = unit(sum)
    const front = spotsOf(mouths, members, out)
    const { xs, ys } = front
    const spacings = members.flatMap((_, i) =>
      members.map((__, k) => ({ i, k, mm: Math.hypot(xs[k]! - xs[i]!, ys[k]! - ys[i]!) })),
    )
    return {
      mouths,
      out,
      members,
      purposes: members.map((each) => purposeOf(mouths[each]!.bore)),
      front,
      back: spotsOf(mouths, members, times(out, -1)),
      spacings: spacings
        .filter(({ mm }) => mm > LEAST_SPACING_MM - SPACING_MM)
        .toSorted((one, other) => one.mm - other.mm),
    }
  })
}

function spotsOf(mouths: readonly Mouth[], members: readonly number[], along: Vec3): Spots {
  const { right, up } = flatAxes(along)
  const all = (axis: Vec3) => Float64Array.from(members, (each) => dot(mouths[each]!.atMm, axis))
  return { xs: all(right), ys: all(up), heights: all(along) }
}

/**
 * The ways in which two or more holes of b come to meet holes of a: mouth on mouth, axis on axis,
 * b's turned against a's. Each is a turn and a move, never a mirror image; the most holes first.
 * Where a hole comes to lie beside one it should meet there is none of fewer than four holes, and
 * more are told as near misses: posts may part them.
 *
 * @param mostTwos how many ways with two holes are wanted of two patterns; those whose holes are as
 *   far apart stay.
 */
export function matchBores(
  a: readonly Pattern[],
  b: readonly Pattern[],
  mostTwos: number,
): readonly BoreMatch[] {
  return a
    .flatMap((one) => b.flatMap((other) => matchPatterns(one, other, mostTwos)))
    .toSorted((one, other) => other.pairs.length - one.pairs.length)
}

/**
 * Places in the patterns: a's and b's first, a's and b's second, and how much nearer one pair is.
 */
interface Seed {
  readonly i: number
  readonly j: number
  readonly k: number
  readonly l: number
  readonly mm: number
  readonly offMm: number
}
type Pairs = readonly (readonly [a: number, b: number])[]

/** Both patterns, looked at from a's side: what comes out of b goes into a. */
interface Meeting {
  readonly a: Spots
  readonly b: Spots
  readonly countA: number
  readonly countB: number
  /** 1 where a's i fits b's j, at i · countB + j. */
  readonly fit: Uint8Array
}

function matchPatterns(a: Pattern, b: Pattern, mostTwos: number): readonly BoreMatch[] {
  const [countA, countB] = [a.members.length, b.members.length]
  if (countA < 2 || countB < 2) return []
  const fit = new Uint8Array(countA * countB)
  for (let i = 0; i < countA; i++) {
    for (let j = 0; j < countB; j++) {
      if (purposesFit(a.purposes[i]!, b.purposes[j]!)) fit[i * countB + j] = 1
    }
  }
  const meeting: Meeting = { a: a.front, b: b.back, countA, countB, fit }
  const seen = new Set<string>()
  const used = new Set<number>()
  const found: BoreMatch[] = []
  const take = (pairs: Pairs) => {
    const key = pairs.map(([i, j]) => `${i}:${j}`).join(' ')
    if (seen.has(key)) return
    seen.add(key)
    const turn = fitTurn(meeting, pairs)
    const isNearMiss = nearlyMisses(meeting, pairs, turn)
    if (isNearMiss && pairs.length < LEAST_APART) return
    found.push({
      pairs: pairs.map(([i, j]) => [a.members[i]!, b.members[j]!] as const),
      motion: motionOf(a.out, times(b.out, -1), turn),
      offMm: Math.max(...pairs.map(([i, j]) => offOf(meeting, i, j, turn))),
      isNearMiss,
    })
  }
  const keyOf = (i: number, j: number, k: number, l: number): number =>
    (i * countB + j) * MOST_MOUTHS * MOST_MOUTHS + k * countB + l
  const twos: { readonly met: readonly number[]; readonly offMm: number }[] = []
  for (const { i, j, k, l, offMm } of seedsOf(meeting, a.spacings, b.spacings)) {
    if (used.has(keyOf(i, j, k, l))) continue
    const met = extend(meeting, i, j, k, l)
    if (met.length === 4) twos.push({ met, offMm })
    if (met.length <= 4) continue
    const pairs = settle(meeting, pairsOf(met))
    if (pairs.length === 2) twos.push({ met: pairs.flat(), offMm })
    if (pairs.length < 3) continue
    for (const [m, n] of pairs) for (const [o, p] of pairs) used.add(keyOf(m, n, o, p))
    take(pairs)
  }
  twos.sort((one, other) => one.offMm - other.offMm)
  const enough = found.length + mostTwos
  for (const { met } of twos) {
    if (found.length >= enough) break
    take(pairsOf(met))
  }
  return found
}

/** Two holes of each that are as far apart, the furthest first: they settle the turn best. */
function seedsOf(
  { a, b, countB, fit }: Meeting,
  spacingsA: Pattern['spacings'],
  spacingsB: Pattern['spacings'],
): readonly Seed[] {
  const seeds: Seed[] = []
  let first = 0
  for (const { i: j, k: l, mm } of spacingsB) {
    while (first < spacingsA.length && spacingsA[first]!.mm < mm - SPACING_MM) first++
    if (l < j || mm < LEAST_SPACING_MM) continue
    for (let n = first; n < spacingsA.length; n++) {
      const { i, k, mm: other } = spacingsA[n]!
      if (other > mm + SPACING_MM) break
      if (fit[i * countB + j] === 0 || fit[k * countB + l] === 0) continue
      const step = a.heights[k]! - a.heights[i]! - (b.heights[l]! - b.heights[j]!)
      if (Math.abs(step) > SPACING_MM) continue
      seeds.push({ i, j, k, l, mm, offMm: Math.abs(mm - other) })
    }
  }
  return seeds.toSorted((one, other) => other.mm - one.mm)
}

/** In a's plane: b's spots are turned by the angle, then moved. */
interface Turn {
  readonly cosine: number
  readonly sine: number
  readonly x: number
  readonly y: number
  readonly height: number
}

/**
 * The best turn and move in the least-squares sense: about the two middles, by the angle of the
 * summed products.
 */
function fitTurn({ a, b }: Meeting, pairs: Pairs): Turn {
  const n = pairs.length
  let [ax, ay, ah, bx, by, bh] = [0, 0, 0, 0, 0, 0]
  for (const [i, j] of pairs) {
    ax += a.xs[i]! / n
    ay += a.ys[i]! / n
    ah += a.heights[i]! / n
    bx += b.xs[j]! / n
    by += b.ys[j]! / n
    bh += b.heights[j]! / n
  }
  let cosines = 0
  let sines = 0
  for (const [i, j] of pairs) {
    const [px, py, qx, qy] = [a.xs[i]! - ax, a.ys[i]! - ay, b.xs[j]! - bx, b.ys[j]! - by]
    cosines += qx * px + qy * py
    sines += qx * py - qy * px
  }
  const length = Math.sqrt(cosines * cosines + sines * sines)
  const cosine = cosines / length
  const sine = sines / length
  return {
    cosine,
    sine,
    x: ax - cosine * bx + sine * by,
    y: ay - sine * bx - cosine * by,
    height: ah - bh,
  }
}

/** How far a's i and b's j are off each other once b is turned and moved. mm */
function offOf({ a, b }: Meeting, i: number, j: number, turn: Turn): number {
  const x = turn.cosine * b.xs[j]! - turn.sine * b.ys[j]! + turn.x - a.xs[i]!
  const y = turn.sine * b.xs[j]! + turn.cosine * b.ys[j]! + turn.y - a.ys[i]!
  return Math.sqrt(x * x + y * y)
}

const stepOf = ({ a, b }: Meeting, i: number, j: number, turn: Turn): number =>
  Math.abs(a.heights[i]! - b.heights[j]! - turn.height)

/**
 * All holes that meet once the seed's do, one to one: a's and b's in turns. Called for every seed,
 * so it makes little.
 */
function extend(meeting: Meeting, i: number, j: number, k: number, l: number): readonly number[] {
  const { a, b, countA, countB, fit } = meeting
  const [px, py] = [a.xs[k]! - a.xs[i]!, a.ys[k]! - a.ys[i]!]
  const [qx, qy] = [b.xs[l]! - b.xs[j]!, b.ys[l]! - b.ys[j]!]
  const length = Math.sqrt((px * px + py * py) * (qx * qx + qy * qy))
  const cosine = (qx * px + qy * py) / length
  const sine = (qx * py - qy * px) / length
  // The middles of both meet.
  const [bx, by] = [(b.xs[j]! + b.xs[l]!) / 2, (b.ys[j]! + b.ys[l]!) / 2]
  const x = (a.xs[i]! + a.xs[k]!) / 2 - cosine * bx + sine * by
  const y = (a.ys[i]! + a.ys[k]!) / 2 - sine * bx - cosine * by
  const height = (a.heights[i]! + a.heights[k]! - b.heights[j]! - b.heights[l]!) / 2
  const met: number[] = []
  for (let n = 0; n < countB; n++) {
    const atX = cosine * b.xs[n]! - sine * b.ys[n]! + x
    const atY = sine * b.xs[n]! + cosine * b.ys[n]! + y
    for (let m = 0; m < countA; m++) {
      const dx = a.xs[m]! - atX
      if (dx > SPACING_MM || dx < -SPACING_MM || fit[m * countB + n] === 0) continue
      const dy = a.ys[m]! - atY
      if (dx * dx + dy * dy > SPACING_MM * SPACING_MM) continue
      if (Math.abs(a.heights[m]! - b.heights[n]! - height) > SPACING_MM || isTaken(met, m)) continue
      met.push(m, n)
      break
    }
  }
  return met
}

function isTaken(met: readonly number[], m: number): boolean {
  for (let n = 0; n < met.length; n += 2) if (met[n] === m) return true
  return false
}

const pairsOf = (met: readonly number[]): Pairs =>
  Array.from({ length: met.length / 2 }, (_, n) => [met[2 * n]!, met[2 * n + 1]!] as const)

/** Leaves out the worst until all axes meet; none where fewer than two are left. */
function settle(meeting: Meeting, all: Pairs): Pairs {
  let pairs = all
  while (pairs.length >= 2) {
    const turn = fitTurn(meeting, pairs)
    const offs = pairs.map(([i, j]) => offOf(meeting, i, j, turn))
    const worst = Math.max(...offs)
    if (worst <= OFF_MM) return pairs
    const place = offs.indexOf(worst)
    pairs = pairs.filter((_, n) => n !== place)
  }
  return []
}

function nearlyMisses(meeting: Meeting, pairs: Pairs, turn: Turn): boolean {
  const meetsA = new Set(pairs.map(([i]) => i))
  const meetsB = new Set(pairs.map(([, j]) => j))
  for (let j = 0; j < meeting.countB; j++) {
    for (let i = 0; i < meeting.countA; i++) {
      const off = offOf(meeting, i, j, turn)
      // On one axis and of another size: a way for a tool, a head or a cable.
      if (off <= OFF_MM || off >= NEAR_MISS_MM || (meetsA.has(i) && meetsB.has(j))) continue
      if (stepOf(meeting, i, j, turn) < NEAR_MISS_MM) return true
    }
  }
  return false
}

function motionOf(outA: Vec3, into: Vec3, { cosine, sine, x, y, height }: Turn) {
  const a = flatAxes(outA)
  const b = flatAxes(into)
  const right = plus(times(a.right, cosine), times(a.up, sine))
  const up = plus(times(a.up, cosine), times(a.right, -sine))
  const goal = plus(plus(times(a.right, x), times(a.up, y)), times(outA, height))
  return mapAxes([b.right, b.up, into], [right, up, outA], [0, 0, 0], goal)
}
