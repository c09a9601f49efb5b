import type { Census } from '../model/census.ts'
import type { Recipe } from '../model/settings.ts'
import { paceOf } from './curves.ts'
import { infillLaid, infillSpacingMm, PATTERN_MODELS } from './infill.ts'
import type { LaidSeconds, Motion } from './motion.ts'
import { atSpacing, hopCount, zigzagTime } from './motion.ts'

const NOTHING: LaidSeconds = { cruiseS: 0, turnS: 0 }

/**
 * Seconds for all infill as its pattern is drawn: paths from wall to wall, straight or winding,
 * and steps between them; the steps together are as long as the turns of the figures.
 */
export function infillTime(census: Census, recipe: Recipe, motion: Motion): LaidSeconds {
  if (!(recipe.infillPct > 0)) return NOTHING
  const { pathMm, turnMm, lines } = infillLaid(census, recipe)
  if (pathMm <= 0) return NOTHING
  const { pattern, lineMm } = recipe
  const spacing = infillSpacingMm(recipe)
  const { directions, pathFactor } = PATTERN_MODELS[pattern]
  const { room, oneWay } = census.moves
  const zigzags = atSpacing(oneWay.infill, spacing, ({ hops }) => hopCount(hops))
  const stretched =
    pathFactor === 1 ? room : { ...room, lengthMm: room.lengthMm.map((mm) => mm * pathFactor) }
  // The figures count a turn without the line width that its two lines have already covered.
  const stepMm = lineMm + (lines > 0 ? turnMm / lines : 0)
  const pace = paceOf(pattern, spacing, motion)
  const once = zigzagTime(stretched, zigzags, spacing, stepMm, lineMm, motion, pace)
  return { cruiseS: directions * once.cruiseS, turnS: directions * once.turnS }
}
