import { describe, expect, it } from 'vitest'
import { countAllLayers } from '../../../src/core/census/countAllLayers.ts'
import { MATERIALS } from '../../../src/core/data/materials.ts'
import { PRINTERS } from '../../../src/core/data/printers.ts'
import { layerWork, printTime } from '../../../src/core/figures/hours.ts'
import { PATTERN_MODELS } from '../../../src/core/figures/infill.ts'
import { layersTime } from '../../../src/core/figures/layerSeconds.ts'
import type { LaidRecipe, Pattern } from '../../../src/core/model/settings.ts'
import { RECIPE_DEFAULTS } from '../../../src/core/model/settings.ts'
import { box } from '../../support/meshes.ts'
import { motionParts, narrowRooms } from '../../support/motionParts.ts'
import { plainSeconds } from '../../support/plainHours.ts'
import { seededRandom } from '../../support/random.ts'

const PATTERNS = Object.keys(PATTERN_MODELS) as readonly Pattern[]

const PARTS = [
  ...motionParts(false).map(({ name, mesh }) => ({ name, mesh: mesh() })),
  { name: 'rings of narrow rooms', mesh: narrowRooms() },
  { name: 'a block', mesh: box(60, 60, 4) },
]

// What is kept of a part, and sums in place of its layers, may change nothing: double precision
// alone.
describe.each(PARTS)('hours of $name', ({ name, mesh }) => {
  const random = seededRandom(name.length)
  const one = <T>(of: readonly T[]): T => of[Math.floor(random() * of.length)]!
  const share = (): number => one([0, 0.01, 1, 100, 100 * random(), 100 * random(), 30 * random()])

  it.each([4, 0])('are those of every line and layer, with %i skins beneath', (bottomSkins) => {
    const zone = random() < 0.3 ? [box(10, 10, 3)] : []
    const geometry = { ...RECIPE_DEFAULTS, bottomSkins }
    const census = countAllLayers(mesh, geometry, undefined, zone)
    for (let round = 0; round < 12; round++) {
      const recipe: LaidRecipe = {
        ...geometry,
        pattern: one(PATTERNS),
        infillPct: share(),
        zonePcts: [share()],
        habits: one([{}, { joinedShare: 0.2 }, { oneLineBelow: 1.9 }]),
      }
      const printer = { ...one(PRINTERS), leastLayerS: one([0, 5, 8, 20, 60]) }
      const material = one(MATERIALS)
      const { mid } = printTime(census, recipe, material, printer)
      const plain = plainSeconds(census, recipe, material, printer)
      expect(Math.abs(mid / plain - 1)).toBeLessThan(1e-9)
      const work = layerWork(census, recipe, material, printer)
      const oneByOne = layersTime(work, printer.leastLayerS) + printer.startS
      expect(Math.abs(oneByOne / plain - 1)).toBeLessThan(1e-9)
    }
  })
})
