import { describe, expect, test } from 'vitest'
import { countAllLayers } from '../../../src/core/census/countAllLayers.ts'
import { depositOf } from '../../../src/core/figures/deposit.ts'
import { layerLaid, type LaidVolumes } from '../../../src/core/figures/layerLaid.ts'
import { RECIPE_DEFAULTS, type Recipe } from '../../../src/core/model/settings.ts'
import { blockCensus } from '../../support/blockCensus.ts'
import { box, merge, prism, rectangle, translate } from '../../support/meshes.ts'
import { PLAIN_HABITS } from '../../support/plainHabits.ts'

const KINDS = [
  'wallMm3',
  'gapMm3',
  'skinMm3',
  'strandMm3',
  'infillMm3',
  'supportMm3',
  'brimMm3',
] as const satisfies readonly (keyof LaidVolumes)[]

/** A plate under a gallows: skins over rooms and over air, narrow walls, supports, a brim. */
const GALLOWS = merge([
  prism(rectangle(40, 24), 5),
  translate(box(6.3, 24, 15), [0, 0, 5]),
  translate(box(40, 24, 4), [0, 0, 20]),
])

describe('what one layer is laid as', () => {
  test('a block by hand: skins below, walls and lines in the middle', () => {
    const recipe: Recipe = { ...RECIPE_DEFAULTS, habits: PLAIN_HABITS }
    const census = blockCensus(20, 20, 10, recipe)
    const inside = 18.4 * 18.4
    const first = layerLaid(census, recipe, 0)
    expect(first.wallMm3).toBeCloseTo((400 - inside) * 0.2, 6)
    expect(first.skinMm3).toBeCloseTo(inside * 0.2, 6)
    expect(first.infillMm3).toBe(0)
    const middle = layerLaid(census, recipe, 25)
    expect(middle.wallMm3).toBeCloseTo(first.wallMm3, 9)
    expect(middle.skinMm3).toBe(0)
    // Lines alone are 30 % of the room; the turns at their ends come on top.
    expect(middle.infillMm3).toBeGreaterThan(0.3 * inside * 0.2)
    expect(middle.infillMm3).toBeLessThan(0.36 * inside * 0.2)
  })

  test.each([
    ['lines', 15],
    ['grid', 30],
    ['gyroid', 20],
    ['grid', 100],
  ] as const)('all layers of %s at %s %% together are the piece, kind by kind', (pattern, pct) => {
    const recipe: Recipe = {
      ...RECIPE_DEFAULTS,
      pattern,
      infillPct: pct,
      supports: true,
      brimMm: 4,
    }
    const census = countAllLayers(GALLOWS, recipe)
    const whole = depositOf(census, recipe)
    expect(whole.strandMm3).toBeGreaterThan(0)
    expect(whole.supportMm3).toBeGreaterThan(0)
    for (const kind of KINDS) {
      let sum = 0
      for (let layer = 0; layer < census.layers.count; layer++) {
        sum += layerLaid(census, recipe, layer)[kind]
      }
      expect(sum, kind).toBeCloseTo(whole[kind], 6)
    }
  })
})
