import type { Recipe } from '../../core/model/settings.ts'
import { RECIPE_LIMITS } from '../../core/data/limits.ts'
import { NumberBox } from '../fields/NumberBox.tsx'
import type { PartEdit } from './usePartEdit.ts'

/** Walls as a count and as millimetres, two ways of saying the same; the count is what is kept. */
export function WallFields({
  recipe,
  write,
}: {
  readonly recipe: Recipe
  readonly write: PartEdit
}) {
  const thicknessMm = recipe.walls * recipe.lineMm
  return (
    <>
      <NumberBox
        label="Walls"
        limits={RECIPE_LIMITS.walls}
        value={recipe.walls}
        step={1}
        unit="lines"
        onChange={(walls) => {
          write.edit({ recipe: { walls } })
        }}
      />
      <NumberBox
        label="Wall thickness"
        limits={{ min: 0, max: RECIPE_LIMITS.walls.max * recipe.lineMm, whole: false }}
        value={thicknessMm}
        step={recipe.lineMm}
        unit="mm"
        onChange={(mm) => {
          write.edit({ recipe: { walls: Math.round(mm / recipe.lineMm) } })
        }}
      />
    </>
  )
}
