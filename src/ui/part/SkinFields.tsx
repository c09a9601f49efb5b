import type { Recipe } from '../../core/model/settings.ts'
import { RECIPE_LIMITS } from '../../core/data/limits.ts'
import { NumberBox } from '../fields/NumberBox.tsx'
import { showLength } from '../show.ts'
import type { PartEdit } from './usePartEdit.ts'

export function SkinFields({
  recipe,
  write,
}: {
  readonly recipe: Recipe
  readonly write: PartEdit
}) {
  const mm = (layers: number) => showLength(layers * recipe.layerMm, 2)
  return (
    <>
      <NumberBox
        label="Top skin layers"
        help="skin"
        limits={RECIPE_LIMITS.topSkins}
        value={recipe.topSkins}
        step={1}
        unit={`= ${mm(recipe.topSkins)}`}
        onChange={(topSkins) => {
          write.edit({ recipe: { topSkins } })
        }}
      />
      <NumberBox
        label="Bottom skin layers"
        limits={RECIPE_LIMITS.bottomSkins}
        value={recipe.bottomSkins}
        step={1}
        unit={`= ${mm(recipe.bottomSkins)}`}
        onChange={(bottomSkins) => {
          write.edit({ recipe: { bottomSkins } })
        }}
      />
    </>
  )
}
