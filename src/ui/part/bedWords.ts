import { bedFit } from '../../core/figures/bedFit.ts'
import type { Printer } from '../../core/model/figures.ts'
import type { Part } from '../../core/model/frame.ts'
import { isQuarterTurn, poseBounds } from '../../core/mesh/poseBounds.ts'
import type { Bounds } from '../../core/model/mesh.ts'
import { showLength, showMm } from '../show.ts'
import { lengthUnit } from '../../core/words/shownUnits.ts'

export interface BedWords {
  /** For the opened part. */
  readonly sentence: string
  /** For the row; null when the part fits. */
  readonly mark: string | null
}

type Bed = Pick<Printer, 'bedMm'>
type Lying = Pick<Part, 'pose' | 'recipe'>

/**
 * Whether a part fits the printer as it lies, in words. `boundsMm` are those of the mesh as drawn.
 */
export function bedWords(boundsMm: Bounds, { pose, recipe }: Lying, { bedMm }: Bed): BedWords {
  const { min, max } = poseBounds(boundsMm, pose)
  const size = [max[0] - min[0], max[1] - min[1], max[2] - min[2]] as const
  const rimMm = recipe.brimMm
  const fit = bedFit(size, bedMm, rimMm)
  const brim = rimMm > 0 ? ', brim included' : ''
  const bed = bedMm.map((side) => showMm(side, 1)).join(' × ')
  if (fit.kind === 'fits')
    return { sentence: `Fits the bed of ${bed} ${lengthUnit()}${brim}.`, mark: null }
  if (fit.kind === 'turned') {
    const { fromDeg, toDeg } = fit
    const turn = `${Math.ceil(fromDeg)}–${Math.floor(toDeg)}°`
    return {
      sentence: `Fits the bed of ${bed} ${lengthUnit()} only on the diagonal, turned ${turn}${brim}.`,
      mark: null,
    }
  }
  // The box round a freely turned part is larger than the part.
  const may = isQuarterTurn(pose) ? 'does not' : 'may not'
  const against = `${showLength(fit.partMm, 1)} against ${showLength(fit.limitMm, 1)}${brim}`
  const what = fit.kind === 'too-tall' ? 'in height' : 'also turned on the bed'
  return {
    sentence:
      `${may === 'may not' ? 'May not' : 'Does not'} fit the printer, ${what}: ${against}. ` +
      'Lay it another way, split it, or take a larger printer.',
    mark: `${may} fit the bed`,
  }
}
