import type { Recipe } from '../model/settings.ts'
import type { ToolpathFigures } from '../model/toolpath.ts'

/** What the moves show of a recipe; left out where they do not. */
export function toldRecipe({ recipe }: Pick<ToolpathFigures, 'recipe'>): Partial<Recipe> {
  const told = Object.entries(recipe).filter(([, value]) => value !== null)
  return Object.fromEntries(told) as Partial<Recipe>
}
