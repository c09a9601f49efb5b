import { POST_LENGTHS_MM } from '../data/postLengths.ts'
import { flatAxes } from '../mesh/holes/fitCircle.ts'
import type { Vec3 } from '../model/mesh.ts'
import { mapPoint, type RigidMap, unmapDirection, unmapPoint } from '../mesh/rigidMaps.ts'
import { dot, lengthOf, minus, plus, times } from '../model/vectors.ts'
import { filledBetween, inColumns, type Columns } from './columns.ts'
import { CLASH_MM3 } from './frameClashes.ts'
import type { Shape } from './shapeOf.ts'
import type { Candidate, Mouth, Verdict } from './types.ts'

/** Surfaces nearer than this touch; what lies deeper in each other clashes. mm */
const TOUCH_MM = 0.02
/** Faces that are there round less than this share of the holes carry little. */
const SEATED = 0.6
/** Lying on each other by less, two parts meet by chance. mm² */
const CONTACT_MM2 = 10
/** Where a facetted shaft and a facetted bore of one size cross. mm */
const PRESS_MM = 0.4
/** Columns looked at, about. */
const SAMPLES = 500
/** Points round a mouth where faces should touch, and how far out from its edge. mm */
const RING = 8
const RIM_MM = 0.6
/** As far before a mouth as a head needs. mm */
const BEFORE_MM = 0.5

/** Two solids along one direction: a's columns, and b's where a's straight goes through it. */
interface Pair {
  readonly a: Columns
  readonly b: Columns
  readonly motion: RigidMap
  /** b's heights plus this are a's. */
  readonly lift: number
  spansOfB(x: number, y: number): readonly number[]
}

function pairOf(a: Shape, b: Shape, { motion, direction }: Candidate): Pair {
  const columnsA = a.columns(direction)
  const columnsB = b.columns(unmapDirection(motion, direction))
  const axesA = flatAxes(direction)
  const axesB = flatAxes(columnsB.direction)
  const right = unmapDirection(motion, axesA.right)
  const up = unmapDirection(motion, axesA.up)
  const base = unmapPoint(motion, [0, 0, 0])
  const [rr, ru, ur, uu] = [
    dot(right, axesB.right),
    dot(right, axesB.up),
    dot(up, axesB.right),
    dot(up, axesB.up),
  ]
  const [x0, y0] = [dot(base, axesB.right), dot(base, axesB.up)]
  return {
    a: columnsA,
    b: columnsB,
    motion,
    lift: dot(motion.move, direction),
    spansOfB: (x, y) => columnsB.spansAt(x0 + x * rr + y * ur, y0 + x * ru + y * uu),
  }
}

/**
 * What speaks for and against a way for two parts to meet; null where it cannot be: they run into
 * each other, or what should touch does not. Some tenths of a millisecond, whatever the meshes.
 */
export function judgeOffer(a: Shape, b: Shape, candidate: Candidate): Verdict | null {
  const pair = pairOf(a, b, candidate)
  const { kind, pairs, motion, planeMm, areaMm2 } = candidate
  const met = pairs.map(([i, j]) => [a.mouths[i]!, b.mouths[j]!] as const)
  // The cheapest first: most candidates fail here.
  const round = planeMm === null || met.length === 0 ? 1 : seatOf(pair, met)
  if (round < SEATED) return null
  const both = overlap(pair, a, b, candidate)
  if (both === null) return null
  const { clashMm3, contactMm2 } = both
  if (kind === 'drawn' && contactMm2 < CONTACT_MM2) return null
  const seated = kind === 'faces' ? Math.min(1, contactMm2 / areaMm2) : round
  if (seated < SEATED) return null
  const metA = new Set(pairs.map(([i]) => i))
  const metB = new Set(pairs.map(([, j]) => j))
  const inB = (point: Vec3) => isInside(b, pair.b, unmapPoint(motion, point))
  const inA = (point: Vec3) => isInside(a, pair.a, mapPoint(motion, point))
  return {
    clashMm3,
    contactMm2,
    outMm: outOf(a, b, candidate),
    seated,
    covered:
      a.mouths.filter((mouth, i) => !metA.has(i) && isCovered(mouth, inB)).length +
      b.mouths.filter((mouth, j) => !metB.has(j) && isCovered(mouth, inA)).length,
    headsInside: met.filter(([one, other]) => one.sunk || other.sunk).length,
  }
}

/**
 * The same of a way whose faces posts keep apart: the shortest that lets the two clear each other;
 * null where none does.
 */
export function judgeApart(
  a: Shape,
  b: Shape,
  candidate: Candidate,
): { readonly verdict: Verdict; readonly gapMm: number } | null {
  for (const gapMm of POST_LENGTHS_MM) {
    const moved = movedApart(candidate, gapMm)
    const both = overlap(pairOf(a, b, moved), a, b, { ...moved, planeMm: null })
    if (both === null || both.contactMm2 > 0) continue
    const verdict = {
      clashMm3: both.clashMm3,
      contactMm2: 0,
      outMm: outOf(a, b, moved),
      seated: 1,
      covered: 0,
      headsInside: 0,
    }
    return { verdict, gapMm }
  }
  return null
}

/** With b moved off a by so much. */
export function movedApart(candidate: Candidate, gapMm: number): Candidate {
  const { motion, direction } = candidate
  return { ...candidate, motion: { ...motion, move: plus(motion.move, times(direction, gapMm)) } }
}

function outOf(a: Shape, b: Shape, { motion, direction }: Candidate): number {
  const between = minus(mapPoint(motion, b.centreMm), a.centreMm)
  return lengthOf(minus(between, times(direction, dot(between, direction))))
}

/** Null once the clash is too large. */
function overlap(pair: Pair, a: Shape, b: Shape, { pairs, planeMm }: Candidate) {
  const [ax0, ax1, ay0, ay1] = pair.a.box
  const [bx0, bx1, by0, by1] = boxInA(pair, b)
  const [x0, x1] = [Math.max(ax0, bx0), Math.min(ax1, bx1)]
  const [y0, y1] = [Math.max(ay0, by0), Math.min(ay1, by1)]
  if (!(x1 > x0) || !(y1 > y0)) return { clashMm3: 0, contactMm2: 0 }
  const step = Math.sqrt(((x1 - x0) * (y1 - y0)) / SAMPLES)
  const [columns, rows] = [Math.ceil((x1 - x0) / step), Math.ceil((y1 - y0) / step)]
  const [dx, dy] = [(x1 - x0) / columns, (y1 - y0) / rows]
  const shafts = pairs.flatMap(([i, j]) => {
    const [one, other] = [a.mouths[i]!, b.mouths[j]!]
    if (one.bore.kind !== 'peg' && other.bore.kind !== 'peg') return []
    const [x, y] = inColumns(pair.a, one.atMm)
    return [{ x, y, radius: Math.max(one.bore.diameterMm, other.bore.diameterMm) / 2 }]
  })
  let [clash, contact] = [0, 0]
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      const x = x0 + (column + 0.5) * dx
      const y = y0 + (row + 0.5) * dy
      const spansB = pair.spansOfB(x, y)
      if (spansB.length === 0) continue
      const spansA = pair.a.spansAt(x, y)
      const inPress = shafts.some(
        (shaft) => Math.hypot(x - shaft.x, y - shaft.y) < shaft.radius + PRESS_MM,
      )
      if (!inPress) clash += sharedBy(spansA, spansB, pair.lift)
      if (clash * dx * dy > CLASH_MM3) return null
      if (touchesAt(spansA, spansB, pair.lift, planeMm)) contact += 1
    }
  }
  return { clashMm3: clash * dx * dy, contactMm2: contact * dx * dy }
}

function boxInA({ a, b, motion }: Pair, shape: Shape): readonly [number, number, number, number] {
  const { right, up } = flatAxes(a.direction)
  let [x0, x1, y0, y1] = [Infinity, -Infinity, Infinity, -Infinity]
  const axes = flatAxes(b.direction)
  for (let corner = 0; corner < 8; corner++) {
    const own = plus(
      plus(times(axes.right, b.box[corner & 1]!), times(axes.up, b.box[2 + ((corner >> 1) & 1)]!)),
      times(b.direction, b.box[4 + (corner >> 2)]!),
    )
    const at = mapPoint(motion, own)
    x0 = Math.min(x0, dot(at, right))
    x1 = Math.max(x1, dot(at, right))
    y0 = Math.min(y0, dot(at, up))
    y1 = Math.max(y1, dot(at, up))
  }
  return shape.mesh.indices.length === 0 ? [0, 0, 0, 0] : [x0, x1, y0, y1]
}

function sharedBy(a: readonly number[], b: readonly number[], lift: number): number {
  let sum = 0
  for (let i = 0; i < a.length; i += 2) {
    for (let j = 0; j < b.length; j += 2) {
      const shared = Math.min(a[i + 1]!, b[j + 1]! + lift) - Math.max(a[i]!, b[j]! + lift)
      if (shared > TOUCH_MM) sum += shared
    }
  }
  return sum
}

/** Whether one ends where the other begins, in the plane, or anywhere where there is none. */
function touchesAt(
  a: readonly number[],
  b: readonly number[],
  lift: number,
  planeMm: number | null,
): boolean {
  for (let i = 0; i < a.length; i++) {
    if (planeMm !== null && Math.abs(a[i]! - planeMm) > TOUCH_MM) continue
    // Ends have odd places, beginnings even ones.
    for (let j = 1 - (i % 2); j < b.length; j += 2) {
      if (Math.abs(a[i]! - b[j]! - lift) <= TOUCH_MM) return true
    }
  }
  return false
}

/** Share of the points round the mouths where both faces are there. */
function seatOf(pair: Pair, met: readonly (readonly [Mouth, Mouth])[]): number {
  let touching = 0
  for (const [one, other] of met) {
    const [x, y, height] = inColumns(pair.a, one.atMm)
    const radius = Math.max(one.bore.diameterMm, other.bore.diameterMm) / 2 + RIM_MM
    for (let n = 0; n < RING; n++) {
      const angle = (2 * Math.PI * (n + 0.3)) / RING
      const [px, py] = [x + radius * Math.cos(angle), y + radius * Math.sin(angle)]
      const spansB = pair.spansOfB(px, py)
      if (touchesAt(pair.a.spansAt(px, py), spansB, pair.lift, height)) touching++
    }
  }
  return touching / (RING * met.length)
}

function isInside(shape: Shape, columns: Columns, point: Vec3): boolean {
  const { min, max } = shape.box
  if (point.some((value, k) => value < min[k]! || value > max[k]!)) return false
  const [x, y, height] = inColumns(columns, point)
  return filledBetween(columns.spansAt(x, y), height - TOUCH_MM, height + TOUCH_MM) > TOUCH_MM
}

/** Whether the other part stands before a hole's mouth, in its middle or at its edge. */
function isCovered({ bore, atMm, out }: Mouth, inOther: (point: Vec3) => boolean): boolean {
  if (bore.kind === 'peg') return false
  const before = plus(atMm, times(out, BEFORE_MM))
  const { right, up } = flatAxes(out)
  const radius = 0.45 * bore.diameterMm
  return [
    before,
    plus(before, times(right, radius)),
    minus(before, times(right, radius)),
    plus(before, times(up, radius)),
    minus(before, times(up, radius)),
  ].some(inOther)
}
