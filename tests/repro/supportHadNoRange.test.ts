import { expect, test } from 'vitest'
import { MATERIALS } from '../../src/core/data/materials.ts'
import { PRICES_DEFAULTS } from '../../src/core/data/prices.ts'
import { PRINTER_DEFAULT } from '../../src/core/data/printers.ts'
import { partFigures } from '../../src/core/figures/part.ts'
import type { Range } from '../../src/core/model/figures.ts'
import { RECIPE_DEFAULTS } from '../../src/core/model/settings.ts'
import { blockCensus } from '../support/blockCensus.ts'

/*
 * How much of a support's column is plastic was taken for 15 % and not doubted, so a part that is
 * mostly support had the range of one without. Half to twice the share is common practice, no source.
 */
const PLA = MATERIALS.find(({ id }) => id === 'pla')!
const FULL = { ...RECIPE_DEFAULTS, infillPct: 100 }
const block = blockCensus(20, 20, 10, FULL)
const figuresWith = (supportMm3: number) =>
  partFigures({ ...block, supportMm3 }, FULL, PLA, PRINTER_DEFAULT, PRICES_DEFAULTS)

const width = ({ low, mid, high }: Range): number => (high - low) / mid

test('a part that is mostly support is as unsure of its plastic as its support is', () => {
  const bare = figuresWith(0)
  // 40 cm³ of column, of which 6 are plastic beside the block's 4.
  const held = figuresWith(40_000)
  const supportG = 6 * PLA.densityGCm3.value
  expect(held.spoolG.mid - bare.spoolG.mid).toBeCloseTo(supportG, 6)
  expect(held.spoolG.mid - held.spoolG.low).toBeGreaterThan(supportG / 3)
  expect(held.spoolG.high - held.spoolG.mid).toBeGreaterThan(supportG / 2)
  for (const key of ['spoolG', 'filamentM', 'cost'] as const) {
    expect(width(held[key]), key).toBeGreaterThan(1.2 * width(bare[key]))
  }
  // It does not fly.
  expect(held.massG).toEqual(bare.massG)
})
