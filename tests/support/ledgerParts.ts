import type { Item } from '../../src/core/model/aircraft.ts'
import { MATERIALS } from '../../src/core/data/materials.ts'
import { INFILL_MODEL, plasticSpreads } from '../../src/core/figures/mass.ts'
import { combineSpreads, rangeAbout } from '../../src/core/figures/spread.ts'
import type { Material, PartFigures } from '../../src/core/model/figures.ts'
import type { PrintedPart } from '../../src/core/frame/ledger.ts'

export function materialOf(id: string): Material {
  const found = MATERIALS.find((material) => material.id === id)
  if (!found) throw new Error(`no material ${id}`)
  return found
}

const SURE = { shared: [], own: 0 }
export const NO_DOUBT = { mass: SURE, spool: SURE, filament: SURE, time: SURE, cost: SURE }

/** A printed part of a given mass with the spread the figures give it; its count alone is off by `countShare`. */
export function printedPart(
  id: string,
  massG: number,
  quantity: number,
  material: Material = materialOf('pla'),
  countShare: number = INFILL_MODEL / 2,
): PrintedPart {
  const count = { low: countShare, high: countShare }
  const range = rangeAbout(massG, combineSpreads([...plasticSpreads(material), count]))
  const none = { low: 0, mid: 0, high: 0 }
  const figures: PartFigures = {
    depositMm3: massG * 800,
    wallMm3: massG * 800,
    gapMm3: 0,
    skinMm3: 0,
    strandMm3: 0,
    infillMm3: 0,
    turnShare: 0,
    supportMm3: 0,
    brimMm3: 0,
    solidShare: 1,
    massG: range,
    spoolG: range,
    filamentM: none,
    cost: { ...none, mid: massG / 50, filament: massG / 50, electricity: 0, wear: 0, failures: 0 },
    timeS: none,
    doubt: NO_DOUBT,
  }
  return { id, name: id, quantity, material, figures }
}

/** An item typed in by hand. */
export function typedItem(id: string, massG: number, more: Partial<Item> = {}): Item {
  return {
    id,
    name: id,
    group: 'other',
    quantity: 1,
    massG,
    costEach: 0,
    status: 'estimated',
    basis: 'typed',
    positionMm: null,
    ...more,
  }
}
