import { printedDoubt } from '../../src/core/doubt/printed.ts'
import type { PartShares } from '../../src/core/doubt/printed.ts'
import { scaleNoiseG } from '../../src/core/doubt/readings.ts'
import type { DoubtedPart, WeighedPieces } from '../../src/core/frame/frameDoubt.ts'
import type { Material } from '../../src/core/model/figures.ts'
import { materialOf, NO_DOUBT } from './ledgerParts.ts'

/**
 * A printed part as the model of doubt sees it: solid unless told otherwise, of calculated grams a
 * piece.
 */
export function doubtedPart(
  id: string,
  massG: number,
  quantity: number,
  material: Material = materialOf('pla'),
  more: Partial<PartShares> & { weighed?: WeighedPieces | null; spares?: number } = {},
): DoubtedPart {
  const { weighed = null, spares = 0, ...shares } = more
  const solid = { packed: 1, firstLayer: 0.05, turns: 0, habits: [], count: 0.02 }
  const mass = printedDoubt(material, 'printer', { ...solid, ...shares })
  const range = { low: massG, mid: massG, high: massG }
  const cost = { ...range, filament: 0, electricity: 0, wear: 0, failures: 0 }
  return {
    id,
    name: id,
    quantity,
    spares,
    material,
    aloneS: massG,
    weighed,
    figures: {
      massG: range,
      cost,
      timeS: range,
      filamentM: range,
      doubt: { ...NO_DOUBT, mass, cost: mass },
    },
  }
}

/** What a scale of tenths of a gram said of one piece. */
export function onScale(eachG: number, pieces = 1): WeighedPieces {
  return { eachG, pieces, noiseG: scaleNoiseG(eachG * pieces, 0.1, false) / pieces, trusted: false }
}
