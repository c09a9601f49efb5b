import type { RowSet } from './rowSet.ts'
import type { LengthTally } from './tally.ts'
import { addLength, createTally } from './tally.ts'

/** The lines that fill a region along its rows. */
export interface Lines {
  /** By length; weight in mm across the lines. */
  readonly tally: LengthTally
  /** How often a zigzag begins anew. */
  readonly starts: number
}

/**
 * Takes the rows themselves as the lines. A zigzag goes on from a line to one line of the next row that it overlaps and
 * that no other line took; every line that nothing leads to begins a new one.
 */
export function measureLines(region: RowSet, pitchMm: number): Lines {
  const { start, spans } = region
  const tally = createTally()
  let starts = 0
  for (let row = 0; row + 1 < start.length; row++) {
    let above = row > 0 ? start[row - 1]! : 0
    const aboveEnd = row > 0 ? start[row]! : 0
    for (let i = start[row]!; i < start[row + 1]!; i++) {
      const from = spans[2 * i]!
      const to = spans[2 * i + 1]!
      addLength(tally, to - from, pitchMm)
      while (above < aboveEnd && spans[2 * above + 1]! <= from) above++
      if (above < aboveEnd && spans[2 * above]! < to) above++
      else starts++
    }
  }
  return { tally, starts }
}
