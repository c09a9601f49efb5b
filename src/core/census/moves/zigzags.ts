import type { StraightLines } from '../cut/straighten.ts'

/** Where zigzags begin and end: x, y of one end, x, y of the other; stride 4. mm */
export type ZigzagEnds = Float64Array

/**
 * A zigzag steps at most this many spacings sideways; for a longer way the head lifts and begins
 * anew.
 */
const FURTHEST_STEP = 3

/** Zigzags under way, kept from one call to the next so that a layer needs no new memory. */
let chains = createChains(256)
let ends = new Float64Array(1024)

/** Chain k began at t, c; its last line reaches `from` … `to`, and it stands at the end `at`. */
function createChains(size: number): {
  readonly size: number
  readonly startT: Float64Array
  readonly startC: Float64Array
  readonly from: Float64Array
  readonly to: Float64Array
  readonly at: Float64Array
  readonly open: readonly [Int32Array, Int32Array]
} {
  const numbers = (): Float64Array => new Float64Array(size)
  return {
    size,
    startT: numbers(),
    startC: numbers(),
    from: numbers(),
    to: numbers(),
    at: numbers(),
    open: [new Int32Array(size), new Int32Array(size)],
  }
}

/**
 * Follows zigzags over every `step`-th line. One goes on from the end it has come to, into the line
 * of the next row that overlaps its last, that no other took and that ends nearest; where that is
 * too far, or nothing leads to a line, a new one begins, at the low or at the high end of its first
 * line. Lines end half a line width short of the region's edge; no longer than wide, they are none.
 */
export function zigzagEnds(lines: StraightLines, step: number, startHigh: boolean): ZigzagEnds {
  const { lineMm, lowMm, rows, along } = lines
  const { start, spans } = rows
  if (chains.size < spans.length / 2) chains = createChains(spans.length)
  const { startT, startC, from, to, at } = chains
  const furthest = FURTHEST_STEP * step * lineMm
  const half = lineMm / 2
  if (ends.length < 2 * spans.length) ends = new Float64Array(3 * spans.length)
  let written = 0
  const close = (k: number, c: number): void => {
    ends[written] = along === 0 ? startT[k]! : startC[k]!
    ends[written + 1] = along === 0 ? startC[k]! : -startT[k]!
    ends[written + 2] = along === 0 ? at[k]! : c
    ends[written + 3] = along === 0 ? c : -at[k]!
    written += 4
  }
  let [open, next] = chains.open
  let openCount = 0
  let begun = 0
  let before = 0
  for (let row = step >> 1; row + 1 < start.length; row += step) {
    const c = lowMm + (row + 0.5) * lineMm
    let nextCount = 0
    for (let i = start[row]!; i < start[row + 1]!; i++) {
      const low = spans[2 * i]! + half
      const high = spans[2 * i + 1]! - half
      if (high <= low) continue
      // The chain that overlaps and has its end nearest to either end of the line.
      let best = -1
      let bestMm = Infinity
      for (let n = 0; n < openCount; n++) {
        const k = open[n]!
        if (from[k]! >= high || low >= to[k]!) continue
        const mm = Math.min(Math.abs(at[k]! - low), Math.abs(at[k]! - high))
        if (mm < bestMm) {
          best = n
          bestMm = mm
        }
      }
      let chain = -1
      if (best >= 0) {
        chain = open[best]!
        openCount--
        for (let n = best; n < openCount; n++) open[n] = open[n + 1]!
      }
      if (bestMm <= furthest) {
        at[chain] = Math.abs(at[chain]! - low) <= Math.abs(at[chain]! - high) ? high : low
      } else {
        if (chain >= 0) close(chain, before)
        chain = begun++
        startT[chain] = startHigh ? high : low
        startC[chain] = c
        at[chain] = startHigh ? low : high
      }
      from[chain] = low
      to[chain] = high
      next[nextCount++] = chain
    }
    for (let n = 0; n < openCount; n++) close(open[n]!, before)
    const swap = open
    open = next
    next = swap
    openCount = nextCount
    before = c
  }
  for (let n = 0; n < openCount; n++) close(open[n]!, before)
  return ends.slice(0, written)
}
