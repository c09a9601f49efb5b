import type { Census } from '../model/census.ts'
import { paceOf } from './curves.ts'
import type { InfillRecipe } from './infill.ts'
import { infillLaid, infillSpacingMm, PATTERN_MODELS } from './infill.ts'
import type { LaidSeconds, LineSums, Motion } from './motion.ts'
import { driveLines, zigzagTime } from './motion.ts'

const NOTHING: LaidSeconds = { cruiseS: 0, turnS: 0 }

/** Straight lines of a pattern, driven: whatever their distance. Null for one that winds, which slows it by its waves. */
export function straightLines(
  { moves }: Census,
  { pattern, lineMm }: Pick<InfillRecipe, 'pattern' | 'lineMm'>,
  motion: Motion,
): LineSums | null {
  return PATTERN_MODELS[pattern].pathFactor > 1 ? null : driveLines(moves.room, lineMm, motion)
}

/**
 * Seconds for all infill as its pattern is drawn, in so many zigzags: paths from wall to wall,
 * straight or winding, and steps between them; the steps together are as long as the turns of the
 * figures.
 */
export function infillTime(
  census: Census,
  recipe: InfillRecipe,
  straight: LineSums | null,
  zigzags: number,
  motion: Motion,
): LaidSeconds {
  if (!(recipe.infillPct > 0)) return NOTHING
  const { pathMm, turnMm, lines } = infillLaid(census, recipe)
  if (pathMm <= 0) return NOTHING
  const { pattern, lineMm } = recipe
  const { directions, pathFactor } = PATTERN_MODELS[pattern]
  const spacing = infillSpacingMm(recipe)
  const driven =
    straight ??
    driveLines(census.moves.room, lineMm, motion, pathFactor, paceOf(pattern, spacing, motion))
  // The figures count a turn without the line width that its two lines have already covered.
  const stepMm = lineMm + (lines > 0 ? turnMm / lines : 0)
  const once = zigzagTime(driven, zigzags, spacing, stepMm, motion)
  return { cruiseS: directions * once.cruiseS, turnS: directions * once.turnS }
}
