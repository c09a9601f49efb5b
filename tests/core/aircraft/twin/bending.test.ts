import { describe, expect, it } from 'vitest'
import { RECIPE_DEFAULTS } from '../../../../src/core/model/settings.ts'
import {
  plateBendingNm,
  printedBendingNm,
  thicknessForBendingMm,
} from '../../../../src/core/aircraft/twin/bending.ts'
import { blockCensus } from '../../../support/blockCensus.ts'
import { censusOf, relative } from '../../../support/censusCase.ts'
import { box } from '../../../support/meshes.ts'

/**
 * Tip deflection of a cantilever, mm: F L³ / (3 E I) (Roark, Formulas for Stress and Strain, ch.
 * 8).
 */
const tipMm = (forceN: number, lengthMm: number, ei: number) => (forceN * lengthMm ** 3) / (3 * ei)

/** An outline of that area whose longer side lies along x. */
const flat = (areaMm2: number) => ({ areaMm2, longDeg: 0 })

describe('bending stiffness', () => {
  it('of a 12 × 5 mm arm, 100 mm, 10 N: 13.33 mm at 2 GPa, 0.404 mm in plate of 66 GPa (beam formula, by hand)', () => {
    // N·m² per metre of width × 12 mm of width, in N·mm².
    const ei = (youngsGPa: number) => plateBendingNm(youngsGPa, 5) * 1000 * 12
    expect(relative(tipMm(10, 100, ei(2)), 13.33)).toBeLessThan(1e-3)
    expect(relative(tipMm(10, 100, ei(66)), 0.404)).toBeLessThan(1e-3)
    expect(ei(2) / 2000).toBeCloseTo(125, 9)
  })

  it('of a box with empty rooms is the hollow box exactly: (B H³ − b h³) / 12', () => {
    // So long that the walls at its ends do not count: walls of 0.8 mm on a width of 20 mm, skins
    // of 0.8 mm, 14 mm high.
    const long = 1e9
    const census = blockCensus(long, 20, 14, RECIPE_DEFAULTS)
    const bending = printedBendingNm(
      census.layers,
      { pattern: 'grid', infillPct: 0 },
      2,
      flat(long * 20),
    )
    const hollow = (20 * 14 ** 3 - (20 - 1.6) * (14 - 1.6) ** 3) / 12
    expect(relative(bending * 20, 2 * hollow)).toBeLessThan(1e-6)
  })

  it('of a block filled to 100 % is that of solid plastic', () => {
    const census = blockCensus(120, 20, 14, RECIPE_DEFAULTS)
    const recipe = { pattern: 'gyroid', infillPct: 100 } as const
    expect(
      relative(printedBendingNm(census.layers, recipe, 2, flat(120 * 20)), plateBendingNm(2, 14)),
    ).toBeLessThan(1e-9)
  })

  it('finds the neutral axis when only the bottom has skins', () => {
    // Two strips: a wall-less block whose lowest 2 mm are skin and the 8 mm above are empty is a 2
    // mm plate.
    const settings = { ...RECIPE_DEFAULTS, walls: 0, topSkins: 0, bottomSkins: 10 }
    const census = blockCensus(100, 30, 10, settings)
    const bending = printedBendingNm(
      census.layers,
      { pattern: 'grid', infillPct: 0 },
      3,
      flat(3000),
    )
    expect(relative(bending, plateBendingNm(3, 2))).toBeLessThan(1e-9)
  })

  it('from a counted mesh meets the block worked by hand within 1 %', () => {
    const recipe = { pattern: 'grid', infillPct: 20 } as const
    const counted = printedBendingNm(censusOf(box(120, 20, 14)).layers, recipe, 2, flat(2400))
    const byHand = printedBendingNm(
      blockCensus(120, 20, 14, RECIPE_DEFAULTS).layers,
      recipe,
      2,
      flat(2400),
    )
    expect(relative(counted, byHand)).toBeLessThan(0.01)
  })

  it('of the PETG box 20 × 14, 1.8 mm walls, 1.9 GPa is 5.8 N·m² (worked by hand: hollow box)', () => {
    const long = 1e9
    const settings = { ...RECIPE_DEFAULTS, walls: 4, lineMm: 0.45, topSkins: 9, bottomSkins: 9 }
    const { layers } = blockCensus(long, 20, 14, settings)
    const recipe = { pattern: 'grid', infillPct: 0 } as const
    expect(printedBendingNm(layers, recipe, 1.9, flat(long * 20)) * 0.02).toBeCloseTo(5.8, 1)
  })

  it('of an arm filled with grid is less where the lines cross it at 45°', () => {
    const { layers } = blockCensus(120, 20, 14, { ...RECIPE_DEFAULTS, walls: 1 })
    const recipe = { pattern: 'grid', infillPct: 60 } as const
    const at = (longDeg: number) => printedBendingNm(layers, recipe, 2, { areaMm2: 2400, longDeg })
    // Lines lie at 45° to the bed's sides.
    expect(at(45)).toBeGreaterThan(at(0))
    expect(at(90)).toBeCloseTo(at(0), 9)
  })

  it('and thickness undo one another', () => {
    expect(thicknessForBendingMm(plateBendingNm(50, 3.3), 50)).toBeCloseTo(3.3, 12)
    expect(thicknessForBendingMm(0, 50)).toBe(0)
  })

  it('of layers without plastic is nothing', () => {
    const census = blockCensus(10, 10, 2, {
      ...RECIPE_DEFAULTS,
      topSkins: 0,
      bottomSkins: 0,
      walls: 0,
    })
    expect(printedBendingNm(census.layers, { pattern: 'grid', infillPct: 0 }, 2, flat(100))).toBe(0)
  })
})
