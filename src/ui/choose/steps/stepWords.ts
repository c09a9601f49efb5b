import type { Part } from '../../../core/model/frame.ts'
import { showLength, showNumber } from '../../show.ts'
import type { Step } from '../../part/steps.ts'

/** A step as from what to what. */
export function stepWords({ recipe }: Pick<Part, 'recipe'>, step: Step): string {
  const then = { ...recipe, ...step.recipe }
  switch (step.key) {
    case 'walls':
      return `${recipe.walls} → ${then.walls} walls`
    case 'skins':
      return `${recipe.topSkins} → ${then.topSkins} skins`
    case 'infill':
      return `${showNumber(recipe.infillPct, 1)} → ${showNumber(then.infillPct, 1)} % infill`
    case 'layer':
      return `layers of ${showLength(then.layerMm, 2)}`
    case 'line':
      return `lines of ${showLength(then.lineMm, 2)}`
    case 'pattern':
    case 'plastic':
      return step.words
  }
}
