import type { RunTable } from '../../moves.ts'
import { CORNER_LIMITS, STANDSTILL } from '../../moves.ts'
import { greenArea } from './contours.ts'
import type { Outline } from './simplify.ts'
import { lengthClass } from './tally.ts'

/** Runs of one outline: `keys` pack corner limit, length class and the classes of both ends; see `packKey`. */
export interface OutlineRuns {
  readonly keys: Int32Array
  readonly lengthMm: Float64Array
  readonly lapMm: number
  /** Outer outlines less inner ones. */
  readonly outerMore: number
}

/** How many times around the outlines wall lines go where they share `wallMm2`; fewer than `walls` where not all fit. */
export function lapsThatFit(
  { lapMm, outerMore }: OutlineRuns,
  wallMm2: number,
  walls: number,
  lineMm: number,
): number {
  // On its way in by one line width a line loses a full turn's worth around an outline and gains as much around a hole.
  const fullMm = walls * lapMm - Math.PI * lineMm * walls * walls * outerMore
  return fullMm > 0 ? Math.min(walls, (walls * wallMm2) / (lineMm * fullMm)) : walls
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
 * Breaks every contour at its corners, once for each corner limit; `turns` holds σ at every point of the outline. A lap starts and ends at a standstill, at its sharpest
 * corner, where a seam is hidden best.
 */
export function findWallRuns(outline: Outline, turns: Float64Array): OutlineRuns {
  const keys: number[] = []
  const lengths: number[] = []
  let lapMm = 0
  let outerMore = 0
  for (let c = 0; c + 1 < outline.start.length; c++) {
    const lap = cornersOf(outline.points, turns, outline.start[c]!, outline.start[c + 1]!)
    lapMm += lap.lengthMm
    outerMore +=
      greenArea(outline.points, 2 * outline.start[c]!, 2 * outline.start[c + 1]!) > 0 ? 1 : -1
    CORNER_LIMITS.forEach((limit, index) => {
      let from = 0
      let entry = STILL_CLASS
      for (let i = 0; i < lap.at.length; i++) {
        if (lap.sigma[i]! < limit) continue
        const exit = sigmaClass(lap.sigma[i]!)
        keys.push(packKey(index, lengthClass(lap.at[i]! - from), entry, exit))
        lengths.push(lap.at[i]! - from)
        from = lap.at[i]!
        entry = exit
      }
      keys.push(packKey(index, lengthClass(lap.lengthMm - from), entry, STILL_CLASS))
      lengths.push(lap.lengthMm - from)
    })
  }
  return { keys: Int32Array.from(keys), lengthMm: Float64Array.from(lengths), lapMm, outerMore }
}

/** Corners of one lap in order, by their distance from the seam; the seam itself is left out. */
interface Lap {
  readonly at: number[]
  readonly sigma: number[]
  readonly lengthMm: number
}

function cornersOf(points: Float64Array, turns: Float64Array, begin: number, end: number): Lap {
  const at: number[] = []
  const sigma: number[] = []
  let travelled = 0
  let seam = -1
  let sharpest = -1
  for (let i = begin; i < end; i++) {
    const next = i + 1 < end ? i + 1 : begin
    const turn = turns[i]!
    if (turn >= CORNER_LIMITS[0]!) {
      if (turn > sharpest + 1e-9) {
        sharpest = turn
        seam = at.length
      }
      at.push(travelled)
      sigma.push(turn)
    }
    const outU = points[2 * next]! - points[2 * i]!
    const outV = points[2 * next + 1]! - points[2 * i + 1]!
    travelled += Math.sqrt(outU * outU + outV * outV)
  }
  if (seam < 0) return { at, sigma, lengthMm: travelled }
  const zero = at[seam]!
  const order = [...at.keys()].map((i) => (i + seam) % at.length).slice(1)
  return {
    at: order.map((i) => (at[i]! - zero + travelled) % travelled),
    sigma: order.map((i) => sigma[i]!),
    lengthMm: travelled,
  }
}

/** Gathers the runs of all layers. */
export interface RunTally {
  /** Goes around so many times. */
  add(runs: OutlineRuns, laps: number): void
  /** One table a corner limit. */
  finish(): { tables: RunTable[]; lapMm: number }
}

export function createRunTally(): RunTally {
  const entries = new Map<number, { count: number; totalMm: number }>()
  let lapMm = 0
  return {
    add(runs, laps) {
      // An outline narrower than the scan can see has no walls; its runs would have no mean length.
      if (!(laps > 0)) return
      lapMm += runs.lapMm * laps
      for (let i = 0; i < runs.keys.length; i++) {
        const entry = entries.get(runs.keys[i]!)
        if (entry) {
          entry.count += laps
          entry.totalMm += runs.lengthMm[i]! * laps
        } else {
          entries.set(runs.keys[i]!, { count: laps, totalMm: runs.lengthMm[i]! * laps })
        }
      }
    },
    finish() {
      const tables = CORNER_LIMITS.map((_, limit) => {
        const mine = [...entries].filter(
          ([key]) => (key / (SIGMA_CLASSES * SIGMA_CLASSES)) >> 7 === limit,
        )
        return {
          lengthMm: Float32Array.from(mine, ([, entry]) => entry.totalMm / entry.count),
          gentle: Float32Array.from(mine, ([key]) =>
            sigmaOf(((key / SIGMA_CLASSES) | 0) % SIGMA_CLASSES),
          ),
          sharp: Float32Array.from(mine, ([key]) => sigmaOf(key % SIGMA_CLASSES)),
          count: Float32Array.from(mine, ([, entry]) => entry.count),
        }
      })
      return { tables, lapMm }
    },
  }
}
