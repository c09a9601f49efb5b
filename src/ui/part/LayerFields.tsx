import type { Recipe } from '../../core/model/settings.ts'
import { RECIPE_LIMITS } from '../../core/data/limits.ts'
import { tallLayerFinding } from '../../core/figures/tallLayerFinding.ts'
import { NumberBox } from '../fields/NumberBox.tsx'
import type { PartEdit } from './usePartEdit.ts'

export function LayerFields({
  recipe,
  write,
}: {
  readonly recipe: Recipe
  readonly write: PartEdit
}) {
  const tall = tallLayerFinding(recipe)
  return (
    <>
      <NumberBox
        label="Layer height"
        limits={RECIPE_LIMITS.layerMm}
        value={recipe.layerMm}
        step={0.01}
        unit="mm"
        onChange={(layerMm) => {
          write.edit({ recipe: { layerMm } })
        }}
      />
      <NumberBox
        label="First layer"
        limits={RECIPE_LIMITS.firstLayerMm}
        value={recipe.firstLayerMm}
        step={0.01}
        unit="mm"
        onChange={(firstLayerMm) => {
          write.edit({ recipe: { firstLayerMm } })
        }}
      />
      <NumberBox
        label="Line width"
        limits={RECIPE_LIMITS.lineMm}
        value={recipe.lineMm}
        step={0.01}
        unit="mm"
        onChange={(lineMm) => {
          write.edit({ recipe: { lineMm } })
        }}
      />
      {tall === null ? null : <p className="caution">{tall.message}</p>}
    </>
  )
}
