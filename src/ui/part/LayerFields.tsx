import { RECIPE_LIMITS } from '../../core/data/limits.ts'
import { tallLayerFinding } from '../../core/figures/tallLayerFinding.ts'
import type { Recipe } from '../../core/model/settings.ts'
import { NumberBox } from '../fields/NumberBox.tsx'
import type { PartEdit } from './usePartEdit.ts'
import { toldWords } from '../../core/words/toldWords.ts'

interface LayerFieldProps {
  readonly recipe: Recipe
  readonly write: PartEdit
}

export function LayerField({ recipe, write }: LayerFieldProps) {
  const tall = tallLayerFinding(recipe, 'en')
  return (
    <>
      <NumberBox
        label="Layer height"
        help="layer"
        limits={RECIPE_LIMITS.layerMm}
        value={recipe.layerMm}
        step={0.01}
        unit="mm"
        onChange={(layerMm) => {
          write.edit({ recipe: { layerMm } })
        }}
      />
      {tall === null ? null : <p className="caution">{toldWords(tall.message)}</p>}
    </>
  )
}

export function FirstLayerField({ recipe, write }: LayerFieldProps) {
  return (
    <NumberBox
      label="First layer"
      help="first layer"
      limits={RECIPE_LIMITS.firstLayerMm}
      value={recipe.firstLayerMm}
      step={0.01}
      unit="mm"
      onChange={(firstLayerMm) => {
        write.edit({ recipe: { firstLayerMm } })
      }}
    />
  )
}

export function LineField({ recipe, write }: LayerFieldProps) {
  return (
    <NumberBox
      label="Line width"
      help="line"
      limits={RECIPE_LIMITS.lineMm}
      value={recipe.lineMm}
      step={0.01}
      unit="mm"
      onChange={(lineMm) => {
        write.edit({ recipe: { lineMm } })
      }}
    />
  )
}
