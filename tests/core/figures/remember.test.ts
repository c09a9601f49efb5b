import { describe, expect, it } from 'vitest'
import { MATERIALS } from '../../../src/core/data/materials.ts'
import { PRICES_DEFAULTS } from '../../../src/core/data/prices.ts'
import { PRINTERS } from '../../../src/core/data/printers.ts'
import { PATTERN_MODELS } from '../../../src/core/figures/infill.ts'
import { partFigures } from '../../../src/core/figures/part.ts'
import { createMemory } from '../../../src/core/figures/remember.ts'
import { countAllLayers } from '../../../src/core/census/countAllLayers.ts'
import type { Pattern } from '../../../src/core/model/settings.ts'
import { RECIPE_DEFAULTS } from '../../../src/core/model/settings.ts'
import { box, merge, translate } from '../../support/meshes.ts'
import { seededRandom } from '../../support/random.ts'

const part = merge([box(30, 20, 6), translate(box(12, 12, 4), [40, 0, 0])])
const CENSUS = countAllLayers(part, RECIPE_DEFAULTS, undefined, [box(10, 10, 6)])
const PATTERNS = Object.keys(PATTERN_MODELS) as readonly Pattern[]

describe('what is remembered of a census', () => {
  it('is what would be made afresh, whatever was asked before', () => {
    const random = seededRandom(20_261)
    const one = <T>(of: readonly T[]): T => of[Math.floor(random() * of.length)]!
    for (let round = 0; round < 200; round++) {
      const recipe = {
        ...RECIPE_DEFAULTS,
        pattern: one(PATTERNS),
        infillPct: one([0, 3, 20, 45, 70, 100]),
        zonePcts: [one([10, 60, 100])],
        habits: one([{}, { joinedShare: 0 }, { joinedShare: 0.5 }]),
      }
      const material = one(MATERIALS)
      // As a form makes it: a new printer for each change.
      const printer = { ...one(PRINTERS), wallMmS: one([30, 60]), travelMmS: one([80, 200]) }
      const figuresOf = (census: typeof CENSUS) =>
        partFigures(census, recipe, material, printer, PRICES_DEFAULTS)
      expect(figuresOf(CENSUS)).toEqual(figuresOf(structuredClone(CENSUS)))
    }
  })

  it('is made once, and again when it was asked too long ago', () => {
    const remember = createMemory<number>(2)
    let made = 0
    const ask = (...key: readonly unknown[]): number => remember(CENSUS, key, () => ++made)
    expect([ask('a', 1), ask('a', 1), ask('a', 2), ask('a', 1)]).toEqual([1, 1, 2, 1])
    expect([ask('b'), ask('a', 1)]).toEqual([3, 4])
  })
})
