import type { Census } from '../../core/model/census.ts'
import type { Material, PartFigures } from '../../core/model/figures.ts'
import { formatMass } from '../../core/words/format.ts'
import { infillNote } from '../../core/figures/note.ts'
import type { Recipe } from '../../core/model/settings.ts'

/**
 * The sentence beside the infill slider: that it hardly matters, or what ten points of it are worth
 * on one piece.
 */
export function infillWorth(
  census: Census,
  figures: PartFigures,
  recipe: Recipe,
  material: Material,
): string {
  const note = infillNote(figures, census, recipe)
  if (note !== null) return note
  const tenPointsG = (census.roomMm3 * 0.1 * material.densityGCm3.value * material.flow) / 1000
  return `Ten points of infill are worth about ${formatMass(tenPointsG)} a piece.`
}
