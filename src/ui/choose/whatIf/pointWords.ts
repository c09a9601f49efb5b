import { PATTERN_NAMES } from '../../../core/data/limits.ts'
import type { PartWay } from '../../../core/model/frame.ts'
import { showLength, showNumber } from '../../show.ts'
import type { WhatIfPanel } from './useWhatIf.ts'

export const PANEL_NAMES: Readonly<Record<WhatIfPanel['key'], string>> = {
  infill: 'Infill',
  walls: 'Walls',
  skins: 'Skins',
  layer: 'Layer',
  pattern: 'Pattern',
  material: 'Plastic',
}

/** A value of a setting as it is read beside its name. */
export function pointWords(
  key: WhatIfPanel['key'],
  { recipe, materialId }: PartWay,
  materialName: (id: string) => string,
): string {
  switch (key) {
    case 'infill':
      return `${showNumber(recipe.infillPct, 1)} %`
    case 'walls':
      return String(recipe.walls)
    case 'skins':
      return recipe.topSkins === recipe.bottomSkins
        ? String(recipe.topSkins)
        : `${recipe.topSkins}, ${recipe.bottomSkins}`
    case 'layer':
      return showLength(recipe.layerMm, 2)
    case 'pattern':
      return PATTERN_NAMES[recipe.pattern]
    case 'material':
      return materialName(materialId)
  }
}
