import type { RowSet } from '../rows/rowSet.ts'
import { rowLengthMm } from '../rows/rowSet.ts'
import type { ScanGrid } from '../rows/scanGrid.ts'
import { straighten } from '../cut/straighten.ts'
import type { LengthTally } from './tally.ts'
import { addLength, createTally } from './tally.ts'
import type { ZigzagEnds } from './zigzags.ts'
import { zigzagEnds } from './zigzags.ts'

/** The straight lines that fill a region. */
export interface Lines {
  /** By length; weight in mm across the lines. */
  readonly tally: LengthTally
  /** Number and summed length of lines laid, which end half a line width inside the region. mm */
  readonly count: number
  readonly laidMm: number
  /**
   * For each spacing the zigzags that begin at the low end of their first line, and those that
   * begin at its high end.
   */
  readonly zigzags: readonly (readonly [ZigzagEnds, ZigzagEnds])[]
}

/**
 * Lays lines `lineMm` apart to see how long they are, and joins every `steps`-th of them to
 * zigzags. The lines together stand for exactly the region's area.
 */
export function measureLines(
  region: RowSet,
  grid: ScanGrid,
  lineMm: number,
  steps: readonly number[],
): Lines {
  const lines = straighten(region, grid, lineMm)
  const { spans } = lines.rows
  const fullMm = rowLengthMm(lines.rows)
  const weight = fullMm > 0 ? (rowLengthMm(region) * grid.pitchMm) / fullMm : 0
  const tally = createTally()
  let count = 0
  let laidMm = 0
  for (let i = 0; i < spans.length; i += 2) {
    const mm = spans[i + 1]! - spans[i]!
    addLength(tally, mm, weight)
    if (mm <= lineMm) continue
    count++
    laidMm += mm - lineMm
  }
  const zigzags = steps.map(
    (step) => [zigzagEnds(lines, step, false), zigzagEnds(lines, step, true)] as const,
  )
  return { tally, count, laidMm, zigzags }
}
