import type { Recipe } from '../../core/model/settings.ts'
import { showNumber } from '../show.ts'

/** A recipe on one line: what changes the grams most comes first. */
export function recipeWords(recipe: Recipe): string {
  const infill =
    recipe.infillPct === 0 ? 'hollow' : `${showNumber(recipe.infillPct, 0)} % ${recipe.pattern}`
  const walls = `${recipe.walls} wall${recipe.walls === 1 ? '' : 's'}`
  const extras = `${recipe.supports ? ' · supports' : ''}${recipe.brimMm > 0 ? ' · brim' : ''}`
  return `${walls} · ${infill} · ${showNumber(recipe.layerMm, 2)} mm${extras}`
}
