import type { Census } from '../model/census.ts'
import type { Material, PartFigures, Prices, Printer } from '../model/figures.ts'
import type { LaidRecipe } from '../model/settings.ts'
import { assembleFigures } from './assemble.ts'
import { countDoubt } from './countDoubt.ts'
import { depositOf } from './deposit.ts'
import { habitErrors } from './habitErrors.ts'
import { printTime } from './hours.ts'
import { INFILL_MODEL, SOLID_MODEL } from './mass.ts'

/**
 * The figures of one piece, from its counted layers. The recipe's geometry settings must be those
 * the census was taken with. Cheap enough for every step of a slider drag.
 */
export function partFigures(
  census: Census,
  recipe: LaidRecipe,
  material: Material,
  printer: Printer,
  prices: Prices,
): PartFigures {
  const deposit = depositOf(census, recipe)
  const keptMm3 = deposit.wallMm3 + deposit.skinMm3 + deposit.infillMm3
  const sparse = keptMm3 > 0 ? deposit.sparseMm3 / keptMm3 : 0
  const habits = habitErrors(census, recipe, deposit, printer.id)
  const count = Math.hypot(
    SOLID_MODEL * (1 - sparse),
    INFILL_MODEL * sparse,
    countDoubt(census, recipe),
    tieShare(census, keptMm3),
    2 * habits.own,
  )
  const time = printTime(census, recipe, material, printer)
  return assembleFigures(deposit, count, habits, time, material, printer, prices)
}

/** What the last layer holds of a part that may as well be printed without it. */
function tieShare({ byHabit, layers }: Census, keptMm3: number): number {
  if (!byHabit.tie || !(keptMm3 > 0)) return 0
  const last = layers.count - 1
  const solidMm2 = (layers.wallMm2[last] ?? 0) + (layers.skinMm2[last] ?? 0)
  return (solidMm2 * (layers.heightMm[last] ?? 0)) / keptMm3
}
