import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { MATERIALS } from '../../../src/core/data/materials.ts'
import { PRICES_DEFAULTS } from '../../../src/core/data/prices.ts'
import { PRINTER_DEFAULT } from '../../../src/core/data/printers.ts'
import { PACKING_MID } from '../../../src/core/doubt/factors.ts'
import { partFigures } from '../../../src/core/figures/part.ts'
import type { Material } from '../../../src/core/model/figures.ts'
import { countAllLayers } from '../../../src/core/census/countAllLayers.ts'
import { RECIPE_DEFAULTS } from '../../../src/core/model/settings.ts'
import type { Recipe } from '../../../src/core/model/settings.ts'
import { blockCensus } from '../../support/blockCensus.ts'
import { prism, specimenOutline } from '../../support/meshes.ts'
import { PLAIN_HABITS } from '../../support/plainHabits.ts'

const PLA = MATERIALS[0]!
const figuresOf = (w: number, d: number, h: number, recipe: Recipe, material = PLA) =>
  partFigures(blockCensus(w, d, h, recipe), recipe, material, PRINTER_DEFAULT, PRICES_DEFAULTS)

describe('a 20 × 20 × 10 mm block by hand', () => {
  // 0.8 mm walls, 4 + 4 skins of 50 layers, grid at 30 %.
  const figures = figuresOf(20, 20, 10, { ...RECIPE_DEFAULTS, habits: PLAIN_HABITS })
  const inside = 18.4 * 18.4
  const room = inside * 8.4

  it('has its walls, skins and lines', () => {
    expect(figures.wallMm3).toBeCloseTo((400 - inside) * 10, 6)
    expect(figures.skinMm3).toBeCloseTo(inside * 1.6, 6)
    const turns = figures.infillMm3 * figures.turnShare
    expect(figures.infillMm3 - turns).toBeCloseTo(0.3 * room, 6)
    // Grid: lines 2.667 mm apart both ways; 18.4 mm walked less one gap, each gap shorter by a line
    // width, 0.4 × 0.2 mm bead.
    const gap = 0.8 / 0.3
    expect(turns).toBeCloseTo(2 * (18.4 - gap) * (1 - 0.4 / gap) * 0.4 * 8.4, 6)
  })

  it('adds up, and weighs what its plastic weighs', () => {
    const { depositMm3, wallMm3, skinMm3, infillMm3, massG } = figures
    expect(depositMm3).toBeCloseTo(wallMm3 + skinMm3 + infillMm3, 9)
    // Channels stay open between lines that touch: skins; 30 % of the infill at 30 %; of two walls
    // all sides but the outer one and what of the inner one the body leaves free.
    const filled = (1.6 + 0.3 * 8.4) / 10
    const packed = (1 - (2 - filled) / 4) * wallMm3 + skinMm3 + 0.3 * infillMm3
    const plasticMm3 = depositMm3 - (1 - PACKING_MID) * packed
    expect(massG.mid).toBeCloseTo((plasticMm3 * 1.24) / 1000, 9)
    expect(figures.solidShare).toBeCloseTo((wallMm3 + skinMm3) / depositMm3, 9)
    expect(figures.filamentM.mid).toBeCloseTo(depositMm3 / 2.4053 / 1000, 4)
  })

  it('takes metres that no error of grams widens: density, diameter, packing', () => {
    const { mass, filament } = figures.doubt
    const gone = mass.shared.filter(({ id }) => !filament.shared.some((one) => one.id === id))
    expect(gone.map(({ id }) => id.split(':')[0])).toEqual(['density', 'diameter', 'packing'])
    const { low, mid, high } = figures.filamentM
    const squares = filament.shared.reduce((sum, { effect }) => sum + effect ** 2, 0)
    expect(high - mid).toBeCloseTo(2 * mid * Math.sqrt(squares + filament.own ** 2), 9)
    expect(mid - low).toBeCloseTo(high - mid, 9)
  })
})

describe('mass', () => {
  const full: Recipe = { ...RECIPE_DEFAULTS, infillPct: 100 }
  /** Of a 20 × 20 mm block filled up: all but a quarter of the walls lies line beside line. */
  const packedShare = 1 - (400 - 18.4 * 18.4) / 4 / 400
  const packedMass = 1 - (1 - PACKING_MID) * packedShare

  // Test bars of ASTM D638 and ISO 527-2, solid grams at 1.24 g/cm³ from their exact volume.
  it.each([
    ['IV', 4, 7.46],
    ['V', 3.2, 1.871],
    ['1A', 4, 11.904],
    ['178', 4, 3.968],
  ] as const)(
    'of a solid bar %s, %s mm thick, is %s g with all gaps closed, less the packing',
    (name, thick, solidG) => {
      // Nothing laid twice: lines that overlap add 1 to 1.5 % to these.
      const plain = { ...full, habits: PLAIN_HABITS }
      const census = countAllLayers(prism(specimenOutline(name), thick), plain)
      const { massG } = partFigures(census, plain, PLA, PRINTER_DEFAULT, PRICES_DEFAULTS)
      // 0.94, and up to 0.955 in the narrowest bar, two fifths of which are walls with a free side.
      expect(massG.mid / solidG).toBeGreaterThan(PACKING_MID - 0.002)
      expect(massG.mid / solidG).toBeLessThan(0.956)
    },
  )

  it('is never above volume × density, and reaches no further than all its errors together', () => {
    const size = fc.integer({ min: 1, max: 80 })
    fc.assert(
      fc.property(
        size,
        size,
        size,
        fc.integer({ min: 0, max: 100 }),
        fc.constantFrom(...MATERIALS),
        (w, d, layers, infillPct, material) => {
          const recipe = { ...RECIPE_DEFAULTS, infillPct }
          const { massG } = figuresOf(w, d, layers * 0.2, recipe, material)
          const solidG = (w * d * layers * 0.2 * material.densityGCm3.value) / 1000
          expect(massG.mid).toBeLessThanOrEqual(solidG * 1.000001)
          // Density at most 9 % (the foaming filament's), packing 6.5, flow 3, diameter 2.3, first
          // layer 15 at most.
          expect(massG.high).toBeLessThanOrEqual(massG.mid * 1.21)
          expect(massG.low).toBeLessThanOrEqual(massG.mid)
          expect(massG.low).toBeGreaterThanOrEqual(0)
        },
      ),
      { seed: 11, numRuns: 200 },
    )
  })

  it('is uncertain by at least ±6 % until the spool’s density is typed, then by less', () => {
    const typed: Material = { ...PLA, densityTyped: true }
    for (const material of MATERIALS) {
      const { massG } = figuresOf(20, 20, 10, full, material)
      expect(massG.high / massG.mid).toBeGreaterThan(1.06)
      expect(massG.low / massG.mid).toBeLessThan(0.94)
    }
    const open = figuresOf(20, 20, 10, full).massG
    const closed = figuresOf(20, 20, 10, full, typed).massG
    expect(closed.mid).toBe(open.mid)
    expect(closed.low).toBeGreaterThan(open.low)
    expect(closed.high).toBeLessThan(open.high)
  })

  it('at full infill is density, diameter, packing, flow, line ends and the count, in quadrature', () => {
    const { massG } = figuresOf(20, 20, 10, full, { ...PLA, densityTyped: true })
    // Of the two wall lines an outer side lies free; its packing does not count.
    const first = 0.15 * (0.2 / 10)
    // Round ends leave half of (1 − π/4) × 0.2 mm bare along the outline, told by the walls' area
    // over their depth.
    const bare = (((1 - Math.PI / 4) * 0.2) / 2) * ((20 ** 2 - 18.4 ** 2) / 0.8 / 20 ** 2)
    const reach = Math.hypot(0.01, 0.023, 0.065 * packedShare, 0.03, first, bare, 0.02)
    expect(1 - massG.low / massG.mid).toBeCloseTo(reach, 6)
    expect(massG.high / massG.mid - 1).toBeCloseTo(reach, 6)
  })

  it('widens with the share of the outline that had to be guessed', () => {
    const sound = blockCensus(20, 20, 10, full)
    const doubtful = { ...sound, doubtfulShare: 0.2 }
    const [a, b] = [sound, doubtful].map((census) =>
      partFigures(census, full, PLA, PRINTER_DEFAULT, PRICES_DEFAULTS),
    )
    expect(b!.massG.low).toBeLessThan(a!.massG.low)
    expect(b!.massG.high).toBeGreaterThan(b!.massG.mid * 1.2)
    expect(b!.timeS.high).toBeGreaterThan(a!.timeS.high)
  })

  // Foaming filament: mass follows the flow it is laid with.
  it('of foaming filament at flow 0.45 is 0.45 ± 0.01 of that at flow 1, on the same path', () => {
    const foaming = MATERIALS.find((material) => material.id === 'foaming-pla')!
    const shell: Recipe = { ...RECIPE_DEFAULTS, walls: 1, infillPct: 0 }
    const foamed = figuresOf(60, 20, 10, shell, foaming)
    const plain = figuresOf(60, 20, 10, shell, { ...foaming, flow: 1 })
    expect(Math.abs(foamed.massG.mid / plain.massG.mid - 0.45)).toBeLessThan(0.01)
    expect(Math.abs(foamed.filamentM.mid / plain.filamentM.mid - 0.45)).toBeLessThan(0.01)
    expect(foamed.depositMm3).toBe(plain.depositMm3)
  })

  it('leaves supports and brim on the spool, not on the scale', () => {
    const census = { ...blockCensus(20, 20, 10, full), supportMm3: 1000, brimMm3: 50 }
    const figures = partFigures(census, full, PLA, PRINTER_DEFAULT, PRICES_DEFAULTS)
    expect(figures.massG.mid).toBeCloseTo(4.96 * packedMass, 9)
    expect(figures.supportMm3).toBeCloseTo(150, 9)
    expect(figures.spoolG.mid).toBeCloseTo(4.96 * packedMass + 0.2 * 1.24, 9)
    expect(figures.depositMm3).toBeCloseTo(4200, 9)
  })

  it('of nothing is nothing', () => {
    const empty = blockCensus(20, 20, 0, full)
    const figures = partFigures(empty, full, PLA, PRINTER_DEFAULT, PRICES_DEFAULTS)
    expect(figures.massG).toEqual({ low: 0, mid: 0, high: 0 })
    expect(figures.timeS.high).toBe(0)
    expect(figures.cost.high).toBe(0)
  })
})
