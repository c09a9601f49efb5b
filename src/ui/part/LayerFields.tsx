import type { Recipe } from '../../core/model/settings.ts'
import { NumberBox } from '../fields/NumberBox.tsx'
import type { PartEdit } from './usePartEdit.ts'

export function LayerFields({
  recipe,
  write,
}: {
  readonly recipe: Recipe
  readonly write: PartEdit
}) {
  return (
    <>
      <NumberBox
        label="Layer height"
        value={recipe.layerMm}
        min={0.04}
        max={1}
        step={0.01}
        unit="mm"
        onChange={(layerMm) => {
          write.edit({ recipe: { layerMm } })
        }}
      />
      <NumberBox
        label="First layer"
        value={recipe.firstLayerMm}
        min={0.04}
        max={1}
        step={0.01}
        unit="mm"
        onChange={(firstLayerMm) => {
          write.edit({ recipe: { firstLayerMm } })
        }}
      />
      <NumberBox
        label="Line width"
        value={recipe.lineMm}
        min={0.1}
        max={2}
        step={0.01}
        unit="mm"
        onChange={(lineMm) => {
          write.edit({ recipe: { lineMm } })
        }}
      />
    </>
  )
}
