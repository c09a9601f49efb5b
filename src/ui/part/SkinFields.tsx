import type { Recipe } from '../../core/model/settings.ts'
import { NumberBox } from '../fields/NumberBox.tsx'
import { showNumber } from '../show.ts'
import type { PartEdit } from './usePartEdit.ts'

export function SkinFields({
  recipe,
  write,
}: {
  readonly recipe: Recipe
  readonly write: PartEdit
}) {
  const mm = (layers: number) => `${showNumber(layers * recipe.layerMm, 2)} mm`
  return (
    <>
      <NumberBox
        label="Top skin layers"
        value={recipe.topSkins}
        min={0}
        max={100}
        step={1}
        digits={0}
        unit={`= ${mm(recipe.topSkins)}`}
        onChange={(topSkins) => {
          write.edit({ recipe: { topSkins } })
        }}
      />
      <NumberBox
        label="Bottom skin layers"
        value={recipe.bottomSkins}
        min={0}
        max={100}
        step={1}
        digits={0}
        unit={`= ${mm(recipe.bottomSkins)}`}
        onChange={(bottomSkins) => {
          write.edit({ recipe: { bottomSkins } })
        }}
      />
    </>
  )
}
