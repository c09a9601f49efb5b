import { printedDoubt } from '../../src/core/doubt/printed.ts'
import type { PartShares } from '../../src/core/doubt/printed.ts'
import type { DoubtLine } from '../../src/core/doubt/lines.ts'
import type { Reading } from '../../src/core/doubt/readings.ts'
import { scaleNoiseG } from '../../src/core/doubt/readings.ts'
import type { Material } from '../../src/core/model/figures.ts'
import { materialOf } from './ledgerParts.ts'

/** A printed line of calculated grams a piece; a solid part of PLA unless told otherwise. */
export function printedLine(
  id: string,
  each: number,
  quantity: number,
  material: Material = materialOf('pla'),
  shares: Partial<PartShares> = {},
): DoubtLine {
  const all = { packed: 1, firstLayer: 0.05, turns: 0, habits: [], count: 0.02, ...shares }
  return {
    id,
    name: id,
    quantity,
    each,
    doubt: printedDoubt(material, 'printer', all),
    scatter: 0.005,
  }
}

/** What a scale of 0.1 g step said of some pieces of a line together. */
export function weighed(lineId: string, massG: number, pieces = 1, id = lineId): Reading {
  return {
    id: `weighed ${id}`,
    value: massG,
    noise: scaleNoiseG(massG, 0.1, false),
    of: { kind: 'pieces', lineId, pieces },
    trusted: false,
  }
}
