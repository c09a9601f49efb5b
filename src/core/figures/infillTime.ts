import type { Census } from '../model/census.ts'
import type { Recipe } from '../model/settings.ts'
import { paceOf } from './curves.ts'
import { infillOf, infillSpacingMm, PATTERN_MODELS } from './infill.ts'
import type { Motion } from './motion.ts'
import { atSpacing, hopCount, zigzagTime } from './motion.ts'

/**
 * Seconds for all infill as its pattern is drawn: paths from wall to wall, straight or winding,
 * and steps between them; the steps together are as long as the turns of the figures.
 */
export function infillTime(census: Census, recipe: Recipe): (motion: Motion) => number {
  let pathMm = 0
  let turnMm = 0
  let lines = 0
  const layerInfill = infillOf(census, recipe)
  for (let i = 0; i < census.layers.count; i++) {
    const layer = layerInfill(i)
    pathMm += layer.pathMm
    turnMm += layer.turnMm
    lines += layer.lines
  }
  if (pathMm <= 0) return () => 0
  const { pattern, lineMm } = recipe
  const spacing = infillSpacingMm(recipe)
  const { directions, pathFactor } = PATTERN_MODELS[pattern]
  const { room, oneWay } = census.moves
  const zigzags = atSpacing(oneWay.infill, spacing, ({ hops }) => hopCount(hops))
  const stretched = { ...room, lengthMm: room.lengthMm.map((mm) => mm * pathFactor) }
  // The figures count a turn without the line width that its two lines have already covered.
  const stepMm = lineMm + (lines > 0 ? turnMm / lines : 0)
  return (motion) => {
    const pace = paceOf(pattern, spacing, motion)
    return directions * zigzagTime(stretched, zigzags, spacing, stepMm, lineMm, motion, pace)
  }
}
