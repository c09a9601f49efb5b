import { RECIPE_LIMITS, times } from '../../core/data/limits.ts'
import type { Recipe } from '../../core/model/settings.ts'
import { NumberBox } from '../fields/NumberBox.tsx'
import { showLength } from '../show.ts'
import type { PartEdit } from './usePartEdit.ts'

interface WallFieldProps {
  readonly recipe: Recipe
  readonly write: PartEdit
}

/** Walls as a count, with the millimetres they make: one line, "4 lines = 1.6 mm". */
export function WallField({ recipe, write }: WallFieldProps) {
  return (
    <NumberBox
      label="Walls"
      help="wall"
      limits={RECIPE_LIMITS.walls}
      value={recipe.walls}
      step={1}
      unit={`${recipe.walls === 1 ? 'line' : 'lines'} = ${showLength(recipe.walls * recipe.lineMm, 2)}`}
      onChange={(walls) => {
        write.edit({ recipe: { walls } })
      }}
    />
  )
}

/** The same as millimetres; the count is what is kept. */
export function WallThicknessField({ recipe, write }: WallFieldProps) {
  return (
    <NumberBox
      label="Wall thickness"
      limits={times(RECIPE_LIMITS.walls, recipe.lineMm)}
      value={recipe.walls * recipe.lineMm}
      step={recipe.lineMm}
      unit="mm"
      onChange={(mm) => {
        write.edit({ recipe: { walls: Math.round(mm / recipe.lineMm) } })
      }}
    />
  )
}
