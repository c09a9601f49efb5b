import { describe, expect, it } from 'vitest'
import { MATERIALS } from '../../../src/core/data/materials.ts'
import { PRINTER_DEFAULT, PRINTERS } from '../../../src/core/data/printers.ts'
import { printTime } from '../../../src/core/figures/hours.ts'
import { takeCensus } from '../../../src/core/geometry/takeCensus.ts'
import { RECIPE_DEFAULTS } from '../../../src/core/settings.ts'
import type { Recipe } from '../../../src/core/settings.ts'
import type { Printer } from '../../../src/core/figures.ts'
import { blockCensus } from '../../support/blockCensus.ts'
import { prism, specimenOutline } from '../../support/meshes.ts'

const [PLA, ABS] = ['pla', 'abs'].map((id) => MATERIALS.find((m) => m.id === id)!)
const BLOCK = blockCensus(20, 20, 10, RECIPE_DEFAULTS)
const timeOn = (change: Partial<Printer>, recipe: Recipe = RECIPE_DEFAULTS): number =>
  printTime(BLOCK, recipe, PLA!, { ...PRINTER_DEFAULT, ...change }).mid

/** A printer that does nothing but lay lines at one speed. */
const STEADY: Partial<Printer> = {
  wallMmS: 50,
  skinMmS: 50,
  infillMmS: 50,
  firstLayerMmS: 50,
  travelMmS: 1e9,
  accelMmS2: 1e15,
  flowMm3S: 1e9,
  layerChangeS: 0,
  startS: 0,
}
/** 50 layers: one outline each, and a room in 42 of them, 0.3 s of drawing filament back for every one. */
const RETRACTS_S = (50 + 42) * 0.3

describe('printTime', () => {
  it('comes to path over speed on a printer that needs no time to turn', () => {
    const recipe = { ...RECIPE_DEFAULTS, infillPct: 0 }
    const pathMm = (BLOCK.wallMm3 + BLOCK.skinMm3) / (0.4 * 0.2)
    expect(timeOn(STEADY, recipe)).toBeCloseTo(pathMm / 50 + RETRACTS_S, 3)
  })

  it('adds the start once and the layer change at every layer', () => {
    const plain = timeOn(STEADY)
    expect(timeOn({ ...STEADY, startS: 300 }) - plain).toBeCloseTo(300, 6)
    expect(timeOn({ ...STEADY, layerChangeS: 2 }) - plain).toBeCloseTo(50 * 2, 6)
  })

  it('waits for the hot end where lines are too fast for it', () => {
    // 0.4 × 0.2 mm at 50 mm/s is 4 mm³/s: a limit of 2 halves the speed.
    const laying = timeOn(STEADY) - RETRACTS_S
    expect(timeOn({ ...STEADY, flowMm3S: 2 }) - RETRACTS_S).toBeCloseTo(2 * laying, 3)
    expect(timeOn({ ...STEADY, flowMm3S: 5 }) - RETRACTS_S).toBeCloseTo(laying, 6)
  })

  it('takes the first layer at its own speed', () => {
    const firstMm = (BLOCK.layers.wallMm2[0]! + BLOCK.layers.skinMm2[0]!) / 0.4
    const slower = timeOn({ ...STEADY, firstLayerMmS: 25 }) - timeOn(STEADY)
    expect(slower).toBeCloseTo(firstMm / 50, 3)
  })

  it.each([
    ['wallMmS', 30],
    ['skinMmS', 30],
    ['infillMmS', 30],
    ['firstLayerMmS', 10],
    ['travelMmS', 50],
    ['accelMmS2', 300],
    ['cornerMmS', 1],
    ['flowMm3S', 3],
    ['layerChangeS', 5],
    ['startS', 900],
  ] as const)('feels a slower printer: %s at %s', (key, value) => {
    expect(timeOn({ [key]: value })).toBeGreaterThan(timeOn({}) + 1)
  })

  it('claims no better than ±15 %, and no better than ±25 % where the head hardly gets up to speed', () => {
    const smooth = printTime(BLOCK, RECIPE_DEFAULTS, PLA!, { ...PRINTER_DEFAULT, ...STEADY })
    expect(smooth.high / smooth.mid).toBeGreaterThanOrEqual(1.15)
    expect(smooth.low / smooth.mid).toBeLessThanOrEqual(0.85)
    const lame = { ...PRINTER_DEFAULT, wallMmS: 300, skinMmS: 300, infillMmS: 300, accelMmS2: 300 }
    const choppy = printTime(BLOCK, RECIPE_DEFAULTS, PLA!, { ...lame, flowMm3S: 1000 })
    expect(choppy.high / choppy.mid).toBeCloseTo(1.25, 2)
  })
})

describe('hours of three bars of ASTM D638 type IV, 4 mm thick, in ABS', () => {
  // Orderings of the 20 runs of R. T. Mushtaq et al., Materials 2023, 16(9), 3392, doi 10.3390/ma16093392, tables 3–7:
  // layer mm, infill %, speed mm/s. Absolute minutes are not compared: walls and acceleration are not published.
  const minutes = (layerMm: number, infillPct: number, speed: number): number => {
    const recipe = { ...RECIPE_DEFAULTS, layerMm, firstLayerMm: layerMm, infillPct }
    const census = takeCensus(prism(specimenOutline('IV'), 4), recipe)
    const printer = { ...PRINTERS[1]!, wallMmS: speed, skinMmS: speed, infillMmS: speed }
    return printTime(census, recipe, ABS!, printer).mid / 60
  }
  const run1 = minutes(0.22, 52, 61)

  it('grow with thinner layers', () => {
    expect(minutes(0.1, 52, 61)).toBeGreaterThan(run1)
    expect(run1).toBeGreaterThan(minutes(0.34, 52, 61))
  })

  it('grow with infill', () => {
    expect(minutes(0.14, 84, 47)).toBeGreaterThan(minutes(0.14, 20, 47))
    expect(minutes(0.22, 100, 61)).toBeGreaterThan(run1)
    expect(run1).toBeGreaterThan(minutes(0.22, 4, 61))
  })

  it('fall with speed', () => {
    expect(minutes(0.22, 52, 40)).toBeGreaterThan(run1)
    expect(run1).toBeGreaterThan(minutes(0.22, 52, 82))
  })
})
