import type { Part } from '../../core/model/frame.ts'
import { showNumber } from '../show.ts'

/** A recipe on one line: what changes the grams most comes first. */
export function recipeWords({ recipe, zones }: Pick<Part, 'recipe' | 'zones'>): string {
  const infill =
    recipe.infillPct === 0 ? 'hollow' : `${showNumber(recipe.infillPct, 0)} % ${recipe.pattern}`
  const walls = `${recipe.walls} wall${recipe.walls === 1 ? '' : 's'}`
  const extras = `${recipe.supports ? ' · supports' : ''}${recipe.brimMm > 0 ? ' · brim' : ''}`
  const inZones =
    zones.length === 0 ? '' : ` · ${zones.length} zone${zones.length === 1 ? '' : 's'}`
  return `${walls} · ${infill}${inZones}${extras}`
}
