import { describe, expect, it } from 'vitest'
import { countAllLayers } from '../../../src/core/census/countAllLayers.ts'
import { MATERIALS } from '../../../src/core/data/materials.ts'
import { PRINTERS } from '../../../src/core/data/printers.ts'
import { printTime } from '../../../src/core/figures/hours.ts'
import { PATTERN_MODELS } from '../../../src/core/figures/infill.ts'
import { routeAt, travelPath } from '../../../src/core/figures/travels.ts'
import type { Pattern } from '../../../src/core/model/settings.ts'
import { RECIPE_DEFAULTS } from '../../../src/core/model/settings.ts'
import { box } from '../../support/meshes.ts'
import { motionParts, narrowRooms } from '../../support/motionParts.ts'

const PLA = MATERIALS.find(({ id }) => id === 'pla')!
const PATTERNS = Object.keys(PATTERN_MODELS) as readonly Pattern[]
/** No least layer time: it would hide what infill takes. */
const CLASSES = ['ordinary', 'fast-enclosed'].map((id) => ({
  ...PRINTERS.find((printer) => printer.id === id)!,
  startS: 0,
  leastLayerS: 0,
}))

const PARTS = [
  ...motionParts(false)
    .filter((_, i) => i % 3 === 0)
    .map(({ name, mesh }) => ({ name, mesh: mesh() })),
  { name: 'rings of narrow rooms', mesh: narrowRooms() },
  { name: 'a block', mesh: box(60, 60, 4) },
].map(({ name, mesh }) => ({ name, census: countAllLayers(mesh, RECIPE_DEFAULTS) }))

describe.each(PARTS)('hours of $name', ({ census }) => {
  const hours = (pattern: Pattern, infillPct: number, printer = CLASSES[0]!): number =>
    printTime(census, { ...RECIPE_DEFAULTS, pattern, infillPct }, PLA, printer).mid

  // Asked at the spacings whose travels are known; between them and while a pattern goes over into
  // solid lines they may sag by a hair. Measured 0.04 % at worst on these parts.
  it('never fall when infill is added', () => {
    for (const printer of CLASSES) {
      for (const pattern of PATTERNS) {
        let before = 0
        for (let pct = 0; pct <= 100; pct += pct < 10 ? 1 : 5) {
          const now = hours(pattern, pct, printer)
          expect(now).toBeGreaterThanOrEqual(before * (1 - 1e-3))
          before = Math.max(before, now)
        }
      }
    }
  })

  // No infill at all and next to none differ by what next to none takes: a hundredth of what 10 %
  // takes, with some way to it.
  it('have no step from 0 to 0.1 %', () => {
    for (const pattern of PATTERNS) {
      const none = hours(pattern, 0)
      const ten = hours(pattern, 10) - none
      expect(hours(pattern, 0.001) / none - 1).toBeLessThan(5e-4)
      expect(hours(pattern, 0.1) - none).toBeLessThan(0.1 * ten + 0.005 * none)
    }
  })

  it('are those of solid lines at 100 %, whatever the pattern', () => {
    for (const printer of CLASSES) {
      const lines = hours('lines', 100, printer)
      for (const pattern of PATTERNS) {
        expect(Math.abs(hours(pattern, 100, printer) / lines - 1)).toBeLessThan(0.03)
      }
    }
  })
})

describe('infill of a large block', () => {
  // As in curves.test.ts, from whole hours: equal grams as gyroid and as lines, each less what the
  // part takes without.
  it.each([
    { infillPct: 10, least: 1.1, most: 1.3 },
    { infillPct: 20, least: 1.2, most: 1.75 },
    { infillPct: 30, least: 1.3, most: 2.1 },
  ])('at $infillPct percent takes gyroid $least to $most times as long as lines', (row) => {
    const { infillPct, least, most } = row
    const { census } = PARTS.at(-1)!
    const of = (pattern: Pattern, pct: number): number =>
      printTime(census, { ...RECIPE_DEFAULTS, pattern, infillPct: pct }, PLA, CLASSES[0]!).mid
    const times =
      (of('gyroid', infillPct) - of('gyroid', 0)) / (of('lines', infillPct) - of('lines', 0))
    expect(times).toBeGreaterThan(least)
    expect(times).toBeLessThan(most)
  })
})

describe('travelled path', () => {
  it('of a lone block is the way back from infill to wall, drawn back where it is far', () => {
    const { census } = PARTS.at(-1)!
    const recipe = { ...RECIPE_DEFAULTS, pattern: 'lines' } as const
    const at = routeAt(census, recipe)
    const { travelM, retracts } = travelPath([{ census, recipe, at }])
    const layers = census.layers.count
    expect(retracts).toBeGreaterThan(0)
    // At most from corner to corner and back, on every layer.
    expect(travelM * 1000).toBeLessThan(layers * 2 * Math.hypot(60, 60))
    expect(travelM * 1000).toBeGreaterThan(layers * 0.4)
  })
})
