import type { Census } from '../model/census.ts'
import { paceOf } from './curves.ts'
import type { InfillLaid, InfillRecipe } from './infill.ts'
import { PATTERN_MODELS } from './infill.ts'
import type { LaidSeconds, LineSums, Motion } from './motion.ts'
import { acrossOf, driveLines, zigzagTime } from './motion.ts'

const NOTHING: LaidSeconds = { cruiseS: 0, turnS: 0 }

/**
 * Straight lines of a pattern, driven: whatever their distance. Null for one that winds, which
 * slows it by its waves.
 */
export function straightLines(
  { moves }: Census,
  { pattern, lineMm }: Pick<InfillRecipe, 'pattern' | 'lineMm'>,
  motion: Motion,
): LineSums | null {
  return PATTERN_MODELS[pattern].pathFactor > 1 ? null : driveLines(moves.room, lineMm, motion)
}

/** A share of infill in a census, as it is laid. */
export interface DrawnLines {
  readonly recipe: InfillRecipe
  readonly spacingMm: number
  readonly laid: InfillLaid
  /** Of one direction. */
  readonly zigzags: number
}

/**
 * Seconds for all infill as its pattern is drawn: paths from wall to wall, straight or winding, and
 * steps between them; the steps together are as long as the turns of the figures.
 */
export function infillTime(
  { moves }: Census,
  { recipe, spacingMm, laid, zigzags }: DrawnLines,
  straight: LineSums | null,
  motion: Motion,
): LaidSeconds {
  if (!(recipe.infillPct > 0) || laid.pathMm <= 0) return NOTHING
  const { pattern, lineMm } = recipe
  const { directions, pathFactor } = PATTERN_MODELS[pattern]
  // Lines that wind cross every edge, and so are more and shorter than straight ones as far apart.
  const acrossMm = straight === null ? acrossOf(moves.room, 0) : 0
  const more = acrossMm > 0 ? Math.max(1, (laid.lines * spacingMm) / acrossMm) : 1
  const driven =
    straight ??
    driveLines(moves.room, lineMm, motion, pathFactor / more, paceOf(pattern, spacingMm, motion))
  // The figures count a turn without the line width that its two lines have already covered.
  const stepMm = lineMm + (laid.lines > 0 ? laid.turnMm / laid.lines : 0)
  const once = zigzagTime(driven, zigzags, spacingMm / more, stepMm, motion)
  return { cruiseS: directions * once.cruiseS, turnS: directions * once.turnS }
}
