import type { Census } from '../model/census.ts'
import type { Recipe } from '../model/settings.ts'
import { infillOf, infillSpacingMm, PATTERN_MODELS } from './infill.ts'
import { moveTime } from './kinematics.ts'
import type { Motion } from './motion.ts'
import { atSpacing, cornerSpeedMmS, hopCount, zigzagTime } from './motion.ts'

/** σ = sin(half the turn) where a honeycomb path bends from one cell side to the next, by 60°. */
const SIGMA_HONEYCOMB = 0.5

/**
 * Seconds for all infill. Lines from wall to wall are runs between right-angled steps; the steps together are as long as
 * the turns of the figures. Honeycomb is all cell sides; gyroid waves are taken as straight lines of their longer length.
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
  const spacing = infillSpacingMm(recipe)
  if (recipe.pattern === 'honeycomb') {
    // Two paths share a row of cells √3·side wide, so a side is 2/√3 of the distance between paths.
    const side = (2 / Math.sqrt(3)) * spacing
    return (motion) => {
      const corner = cornerSpeedMmS(SIGMA_HONEYCOMB, motion)
      return (pathMm / side) * moveTime(side, motion.speedMmS, motion.accelMmS2, corner)
    }
  }
  const { directions, pathFactor } = PATTERN_MODELS[recipe.pattern]
  const { room, oneWay } = census.moves
  const zigzags = atSpacing(oneWay.infill, spacing, ({ hops }) => hopCount(hops))
  const stretched = { ...room, lengthMm: room.lengthMm.map((mm) => mm * pathFactor) }
  // The figures count a turn without the line width that its two lines have already covered.
  const stepMm = recipe.lineMm + (lines > 0 ? turnMm / lines : 0)
  return (motion) =>
    directions * zigzagTime(stretched, zigzags, spacing, stepMm, recipe.lineMm, motion)
}
