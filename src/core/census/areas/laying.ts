import { habitsOf, ROUND_LACK } from '../../model/habits.ts'
import type { Habits } from '../../model/habits.ts'
import type { GeometrySettings } from '../../model/settings.ts'

/** How one layer's lines lie, out of recipe and habits. mm, mm² */
export interface Laying {
  readonly walls: number
  /** Depth of the innermost wall line's inner edge below the outline. */
  readonly wallMm: number
  /** Distance between wall lines, and between the lines of skin. */
  readonly lineMm: number
  /** Strip along the outline that round ends leave bare. */
  readonly bareMm: number
  /** How far skin and infill reach over the walls. */
  readonly overlapMm: number
  readonly habits: Habits
}

/**
 * A line of width w and height h fills w × h with square ends and (w − h)·h + π·h²/4 with round
 * ones, 0.893 of it at 0.4 × 0.2 mm (as with V. E. Kuznetsov et al., Polymers 2018, 10(3), 313, doi
 * 10.3390/polym10030313, table 1, the flow is w × h × speed for twenty nozzles and layers). Lines
 * lie that area ÷ h apart, so inside they fill the layer either way; only the outermost edge stays
 * bare by half of what a line lacks.
 */
export function layingOf(settings: GeometrySettings, heightMm: number, first: boolean): Laying {
  const habits = habitsOf(settings)
  const { walls } = settings
  const lineMm = settings.lineMm * (first ? habits.firstWidthShare : 1)
  const lackMm = habits.bead === 'round' ? ROUND_LACK * heightMm : 0
  const outerMm = Math.max(0, lineMm * habits.outerWidthShare - lackMm)
  const innerMm = Math.max(0, lineMm * habits.innerWidthShare - lackMm)
  const bareMm = walls > 0 ? lackMm / 2 : 0
  const wallMm = walls > 0 ? bareMm + outerMm + (walls - 1) * innerMm : 0
  return {
    walls,
    wallMm,
    lineMm: walls > 0 ? (wallMm - bareMm) / walls : lineMm,
    bareMm,
    overlapMm: Math.min(wallMm, habits.overlapShare * lineMm),
    habits,
  }
}
