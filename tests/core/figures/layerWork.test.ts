import { expect, test } from 'vitest'
import { MATERIALS } from '../../../src/core/data/materials.ts'
import { PRINTERS } from '../../../src/core/data/printers.ts'
import { countAllLayers } from '../../../src/core/census/countAllLayers.ts'
import { layerWork, printTime } from '../../../src/core/figures/hours.ts'
import { layersTime } from '../../../src/core/figures/layerSeconds.ts'
import { RECIPE_DEFAULTS, type Pattern } from '../../../src/core/model/settings.ts'
import { motionParts } from '../../support/motionParts.ts'

/** Two ways to the same sum: hours from sums over the layers, and layer by layer. */
test('layer by layer comes to the hours of the whole piece', () => {
  const material = MATERIALS.find(({ id }) => id === 'petg')!
  const patterns: readonly Pattern[] = ['grid', 'gyroid']
  for (const { mesh } of motionParts(false).slice(0, 8)) {
    for (const pattern of patterns) {
      const recipe = { ...RECIPE_DEFAULTS, pattern, brimMm: 3 }
      const census = countAllLayers(mesh(), recipe)
      for (const printer of PRINTERS) {
        const work = layerWork(census, recipe, material, printer)
        const timeS = layersTime(work, printer.leastLayerS) + printer.startS
        const { mid } = printTime(census, recipe, material, printer)
        expect(timeS / mid).toBeCloseTo(1, 9)
      }
    }
  }
})
