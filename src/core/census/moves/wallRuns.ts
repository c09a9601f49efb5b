import type { RunTable } from '../../model/moves.ts'
import { CORNER_LIMITS, SMALL_LOOP_MM, STANDSTILL } from '../../model/moves.ts'
import { greenArea } from '../cut/contours.ts'
import type { Outline } from '../cut/simplify.ts'
import { lengthClass } from './tally.ts'

/** Contours of an outline together. */
interface Contours {
  readonly lapMm: number
  /** Outer outlines less inner ones. */
  readonly outerMore: number
}

/**
 * Runs of one outline: `keys` pack corner limit, length class and the classes of both ends; see
 * `packKey`. Lap and `outerMore` are of all its contours.
 */
export interface OutlineRuns extends Contours {
  readonly keys: Int32Array
  readonly lengthMm: Float64Array
  /** Those that are small loops. */
  readonly small: Contours & { readonly count: number }
}

/**
 * How many times around the outlines wall lines go where they share `wallMm2`; fewer than `walls`
 * where not all fit.
 */
export function lapsThatFit(
  { lapMm, outerMore }: OutlineRuns,
  wallMm2: number,
  walls: number,
  lineMm: number,
): number {
  // On its way in by one line width a line loses a full turn's worth around an outline and gains as
  // much around a hole.
  const fullMm = lapsMm({ lapMm, outerMore }, walls, lineMm)
  return fullMm > 0 ? Math.min(walls, (walls * wallMm2) / (lineMm * fullMm)) : walls
}

/** Length of so many lines side by side around contours. */
function lapsMm({ lapMm, outerMore }: Contours, laps: number, lineMm: number): number {
  return Math.max(0, laps * lapMm - Math.PI * lineMm * laps * laps * outerMore)
}

/**
 * Of the wall lines around an outline, which goes `laps` times around it, the shares (0–1) that are
 * the outermost lines of its larger contours, and all those of its small loops.
 */
export function wallShares(
  { lapMm, outerMore, small }: OutlineRuns,
  laps: number,
  lineMm: number,
): { readonly outer: number; readonly small: number } {
  const smallMm = lapsMm(small, laps, lineMm)
  const large = { lapMm: lapMm - small.lapMm, outerMore: outerMore - small.outerMore }
  const largeMm = lapsMm(large, laps, lineMm)
  const all = smallMm + largeMm
  if (!(all > 0)) return { outer: small.lapMm < lapMm ? 1 : 0, small: small.lapMm < lapMm ? 0 : 1 }
  const outerMm = Math.min(largeMm, lapsMm(large, Math.min(1, laps), lineMm))
  return { outer: outerMm / all, small: smallMm / all }
}

/** σ classes: ratio steps from the least corner limit up; the last is a standstill. */
const SIGMA_STEP = 1.2
const SIGMA_CLASSES = 18
const STILL_CLASS = SIGMA_CLASSES - 1

function sigmaClass(sigma: number): number {
  if (sigma >= STANDSTILL) return STILL_CLASS
  const steps = Math.log(sigma / CORNER_LIMITS[0]!) / Math.log(SIGMA_STEP)
  return Math.min(STILL_CLASS - 1, Math.max(0, steps | 0))
}

/** Middle of a class, by ratio. */
function sigmaOf(sigma: number): number {
  if (sigma === STILL_CLASS) return STANDSTILL
  return Math.min(1, CORNER_LIMITS[0]! * SIGMA_STEP ** (sigma + 0.5))
}

function packKey(limit: number, length: number, a: number, b: number): number {
  const gentle = Math.min(a, b)
  const sharp = Math.max(a, b)
  return ((limit * 128 + length) * SIGMA_CLASSES + gentle) * SIGMA_CLASSES + sharp
}

/**
 * Breaks every contour at its corners, once for each corner limit; `turns` holds σ at every point
 * of the outline. A lap starts and ends at a standstill, at its sharpest corner, where a seam is
 * hidden best.
 */
export function findWallRuns(outline: Outline, turns: Float64Array): OutlineRuns {
  const keys: number[] = []
  const lengths: number[] = []
  let lapMm = 0
  let outerMore = 0
  const small = { lapMm: 0, outerMore: 0, count: 0 }
  for (let c = 0; c + 1 < outline.start.length; c++) {
    const lap = cornersOf(outline.points, turns, outline.start[c]!, outline.start[c + 1]!)
    lapMm += lap.lengthMm
    const sense =
      greenArea(outline.points, 2 * outline.start[c]!, 2 * outline.start[c + 1]!) > 0 ? 1 : -1
    outerMore += sense
    const isSmall = lap.lengthMm <= SMALL_LOOP_MM
    if (isSmall) {
      small.lapMm += lap.lengthMm
      small.outerMore += sense
      small.count++
    }
    for (let k = 0; k < CORNER_LIMITS.length; k++) {
      const limit = CORNER_LIMITS[k]!
      // Small loops have tables of their own behind the others.
      const index = isSmall ? CORNER_LIMITS.length + k : k
      let from = 0
      let entry = STILL_CLASS
      for (let i = 0; i < lap.corners; i++) {
        if (lapTurns[i]! < limit) continue
        const exit = lapClasses[i]!
        const lengthMm = lapAt[i]! - from
        keys.push(packKey(index, lengthClass(lengthMm), entry, exit))
        lengths.push(lengthMm)
        from = lapAt[i]!
        entry = exit
      }
      keys.push(packKey(index, lengthClass(lap.lengthMm - from), entry, STILL_CLASS))
      lengths.push(lap.lengthMm - from)
    }
  }
  return {
    keys: new Int32Array(keys),
    lengthMm: new Float64Array(lengths),
    lapMm,
    outerMore,
    small,
  }
}

/**
 * Corners of the lap at hand in order: distance from the seam, σ and its class. The seam itself is
 * left out.
 */
let lapAt = new Float64Array(256)
let lapTurns = new Float64Array(256)
let lapClasses = new Int32Array(256)

/** Fills the lists of the lap at hand. */
function cornersOf(
  points: Float64Array,
  turns: Float64Array,
  begin: number,
  end: number,
): { readonly corners: number; readonly lengthMm: number } {
  const count = end - begin
  if (lapAt.length < count) {
    lapAt = new Float64Array(2 * count)
    lapTurns = new Float64Array(2 * count)
    lapClasses = new Int32Array(2 * count)
  }
  let seam = -1
  let sharpest = CORNER_LIMITS[0]! - 1e-9
  for (let i = begin; i < end; i++) {
    if (turns[i]! <= sharpest + 1e-9) continue
    sharpest = turns[i]!
    seam = i
  }
  const from = seam < 0 ? begin : seam
  let lengthMm = 0
  let corners = 0
  for (let k = 0; k < count; k++) {
    const i = from + k < end ? from + k : from + k - count
    const next = i + 1 < end ? i + 1 : begin
    const turn = turns[i]!
    if (k > 0 && turn >= CORNER_LIMITS[0]!) {
      lapAt[corners] = lengthMm
      lapTurns[corners] = turn
      lapClasses[corners++] = sigmaClass(turn)
    }
    const u = points[2 * next]! - points[2 * i]!
    const v = points[2 * next + 1]! - points[2 * i + 1]!
    lengthMm += Math.sqrt(u * u + v * v)
  }
  return { corners, lengthMm }
}

const limitOf = (key: number): number => (key / (SIGMA_CLASSES * SIGMA_CLASSES)) >> 7

/** Runs of one key. */
interface Entry {
  count: number
  totalMm: number
}

/** Gathers the runs of all layers. */
export interface RunTally {
  /** Goes around so many times. */
  add(runs: OutlineRuns, laps: number): void
  /** One table a corner limit, of small loops and of all others. */
  finish(): Readonly<Record<'large' | 'small', { tables: RunTable[]; lapMm: number }>>
}

export function createRunTally(): RunTally {
  // Many layers share their runs: how often they are gone around is summed first.
  const lapsOf = new Map<OutlineRuns, number>()
  let lapMm = 0
  let smallMm = 0
  return {
    add(runs, laps) {
      // An outline narrower than the scan can see has no walls; its runs would have no mean length.
      if (!(laps > 0)) return
      lapMm += (runs.lapMm - runs.small.lapMm) * laps
      smallMm += runs.small.lapMm * laps
      lapsOf.set(runs, (lapsOf.get(runs) ?? 0) + laps)
    },
    finish() {
      const entries = sumEntries(lapsOf)
      const limits = CORNER_LIMITS.length
      const byLimit = Array.from({ length: 2 * limits }, (): [key: number, entry: Entry][] => [])
      entries.forEach((entry, key) => byLimit[limitOf(key)]!.push([key, entry]))
      const tables = byLimit.map((mine) => ({
        lengthMm: Float32Array.from(mine, ([, entry]) => entry.totalMm / entry.count),
        gentle: Float32Array.from(mine, ([key]) =>
          sigmaOf(((key / SIGMA_CLASSES) | 0) % SIGMA_CLASSES),
        ),
        sharp: Float32Array.from(mine, ([key]) => sigmaOf(key % SIGMA_CLASSES)),
        count: Float32Array.from(mine, ([, entry]) => entry.count),
      }))
      return {
        large: { tables: tables.slice(0, limits), lapMm },
        small: { tables: tables.slice(limits), lapMm: smallMm },
      }
    },
  }
}

function sumEntries(lapsOf: ReadonlyMap<OutlineRuns, number>): ReadonlyMap<number, Entry> {
  const entries = new Map<number, Entry>()
  lapsOf.forEach((laps, { keys, lengthMm }) => {
    for (let i = 0; i < keys.length; i++) {
      const entry = entries.get(keys[i]!)
      if (entry) {
        entry.count += laps
        entry.totalMm += lengthMm[i]! * laps
      } else {
        entries.set(keys[i]!, { count: laps, totalMm: lengthMm[i]! * laps })
      }
    }
  })
  return entries
}
