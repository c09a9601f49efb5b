import { START_SPACINGS_MM } from '../../moves.ts'
import type { RowSet } from './rowSet.ts'
import type { LengthTally } from './tally.ts'
import { addLength, createTally } from './tally.ts'

/** The lines that fill a region along its rows. */
export interface Lines {
  /** By length; weight in mm across the lines. */
  readonly tally: LengthTally
  /** How often a zigzag begins anew at each of `START_SPACINGS_MM`. */
  readonly starts: Float64Array
}

/** Takes the rows themselves as the lines; those shorter than `leastMm` are no lines and begin nothing. */
export function measureLines(region: RowSet, pitchMm: number, leastMm: number): Lines {
  const { spans } = region
  const tally = createTally()
  for (let i = 0; i < spans.length; i += 2) addLength(tally, spans[i + 1]! - spans[i]!, pitchMm)
  const starts = Float64Array.from(START_SPACINGS_MM, (spacingMm) =>
    spans.length === 0
      ? 0
      : countStarts(region, Math.max(1, Math.round(spacingMm / pitchMm)), pitchMm, leastMm),
  )
  return { tally, starts }
}

/** A zigzag steps at most this many spacings sideways; for a longer way the head lifts and begins anew. */
const FURTHEST_STEP = 20

/**
 * Follows zigzags over every `step`-th row. One goes on from the end it has come to, into a line of the next such row that
 * overlaps its last and that no other took, entering at the nearer end; where that is too far, or nothing leads to a line,
 * a new one begins.
 */
function countStarts(region: RowSet, step: number, pitchMm: number, leastMm: number): number {
  const { start, spans } = region
  const furthest = FURTHEST_STEP * step * pitchMm
  let starts = 0
  let above: { from: number; to: number; at: number }[] = []
  for (let row = step >> 1; row + 1 < start.length; row += step) {
    const lines: typeof above = []
    let next = 0
    for (let i = start[row]!; i < start[row + 1]!; i++) {
      const from = spans[2 * i]!
      const to = spans[2 * i + 1]!
      if (to - from < leastMm) continue
      while (next < above.length && above[next]!.to <= from) next++
      const led = next < above.length && above[next]!.from < to ? above[next++]! : null
      const toFrom = led ? Math.abs(led.at - from) : Infinity
      const toTo = led ? Math.abs(led.at - to) : Infinity
      if (Math.min(toFrom, toTo) > furthest) starts++
      lines.push({ from, to, at: toTo < toFrom ? from : to })
    }
    above = lines
  }
  return starts
}
