import type { StraightLines } from './straighten.ts'

/** Where zigzags begin and end: x, y of one end, x, y of the other; stride 4. mm */
export type ZigzagEnds = Float64Array

/** A zigzag steps at most this many spacings sideways; for a longer way the head lifts and begins anew. */
const FURTHEST_STEP = 3

interface Chain {
  readonly startT: number
  readonly startC: number
  from: number
  to: number
  at: number
}

/**
 * Follows zigzags over every `step`-th line. One goes on from the end it has come to, into the line of the next row that
 * overlaps its last, that no other took and that ends nearest; where that is too far, or nothing leads to a line, a new one
 * begins, at the low or at the high end of its first line. Lines end half a line width short of the region's edge; no longer
 * than wide, they are none.
 */
export function zigzagEnds(lines: StraightLines, step: number, startHigh: boolean): ZigzagEnds {
  const { lineMm, lowMm, rows, along } = lines
  const { start, spans } = rows
  const furthest = FURTHEST_STEP * step * lineMm
  const ends: number[] = []
  const close = (chain: Chain, c: number): void => {
    if (along === 0) ends.push(chain.startT, chain.startC, chain.at, c)
    else ends.push(chain.startC, -chain.startT, c, -chain.at)
  }
  let open: Chain[] = []
  let before = 0
  for (let row = step >> 1; row + 1 < start.length; row += step) {
    const c = lowMm + (row + 0.5) * lineMm
    const next: Chain[] = []
    for (let i = start[row]!; i < start[row + 1]!; i++) {
      const from = spans[2 * i]! + lineMm / 2
      const to = spans[2 * i + 1]! - lineMm / 2
      if (to <= from) continue
      const led = takeNearest(open, from, to)
      if (led && Math.min(Math.abs(led.at - from), Math.abs(led.at - to)) <= furthest) {
        led.at = Math.abs(led.at - from) <= Math.abs(led.at - to) ? to : from
        led.from = from
        led.to = to
        next.push(led)
      } else {
        if (led) close(led, before)
        next.push({ startT: startHigh ? to : from, startC: c, from, to, at: startHigh ? from : to })
      }
    }
    for (const chain of open) close(chain, before)
    open = next
    before = c
  }
  for (const chain of open) close(chain, before)
  return Float64Array.from(ends)
}

/** Takes out of `open` the chain that overlaps and has its end nearest to either end of the line. */
function takeNearest(open: Chain[], from: number, to: number): Chain | null {
  let best = -1
  let bestMm = Infinity
  for (let i = 0; i < open.length; i++) {
    const chain = open[i]!
    if (chain.from >= to || from >= chain.to) continue
    const mm = Math.min(Math.abs(chain.at - from), Math.abs(chain.at - to))
    if (mm < bestMm) {
      best = i
      bestMm = mm
    }
  }
  return best < 0 ? null : open.splice(best, 1)[0]!
}
