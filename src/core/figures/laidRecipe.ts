import type { Printer } from '../model/figures.ts'
import type { PartZone } from '../model/frame.ts'
import type { LaidRecipe, Recipe } from '../model/settings.ts'

/** Of a part, how it is printed. */
interface PrintedPart {
  readonly recipe: Recipe
  readonly zones: readonly Pick<PartZone, 'infillPct'>[]
}

/**
 * A part's recipe with the infills of its zones, as its figures want it; the habits of the printer
 * in what it leaves open.
 */
export function laidRecipe(
  { recipe, zones }: PrintedPart,
  { habits }: Pick<Printer, 'habits'>,
): LaidRecipe {
  const laid =
    zones.length === 0 ? recipe : { ...recipe, zonePcts: zones.map(({ infillPct }) => infillPct) }
  return habits === undefined ? laid : { ...laid, habits: { ...habits, ...recipe.habits } }
}
