import { describe, expect, it } from 'vitest'
import { PACKING_MID } from '../../../src/core/doubt/factors.ts'
import { printedDoubt } from '../../../src/core/doubt/printed.ts'
import { materialOf } from '../../support/ledgerParts.ts'

/**
 * Solid parts, weighed: Open Dynamic Robot Initiative, open_robot_actuator_hardware, commit
 * 66af1522 (BSD-3-Clause), README.md of mechanics/biped_6dof_v1 and biped_leg_3dof_v1. PC-ABS,
 * scales of 0.1 and 1 g step. Columns: grams; mm³ of the published mesh.
 */
const WEIGHED = [
  [14, 13759],
  [17, 16645],
  [19, 19207],
  [9, 9446],
  [9, 9472],
  [14, 13705],
  [15, 15130],
  [16, 15801],
  [15, 14377],
  [23, 22919],
  [12, 11226],
  [22, 21284],
  [17, 16238],
  [24, 22801],
  [16, 14607],
  [15, 15210],
] as const
/** PC-ABS, data sheet value. g/cm³ */
const DENSITY = 1.1
/** A whole gram on the scale. */
const READING_G = 0.5

const plastic = { ...materialOf('abs'), densityTyped: true }
/** A body of lines side by side; the count as of any part without infill. */
const doubt = printedDoubt(plastic, 'p', {
  packed: 1,
  firstLayer: 0.03,
  turns: 0,
  habits: [],
  count: 0.02,
})
const reach = 2 * Math.hypot(doubt.own, ...doubt.shared.map(({ effect }) => effect))
const midOf = (volumeMm3: number): number => (volumeMm3 / 1000) * DENSITY * PACKING_MID

const shaped = WEIGHED.filter((_, i) => i % 2 === 0)
const held = WEIGHED.filter((_, i) => i % 2 === 1)

describe('solid parts weighed by others', () => {
  it('lie inside the range, none left out', () => {
    for (const [grams, volumeMm3] of WEIGHED) {
      const mid = midOf(volumeMm3)
      expect(grams + READING_G).toBeGreaterThan(mid * (1 - reach))
      expect(grams - READING_G).toBeLessThan(mid * (1 + reach))
    }
  })

  it('keeps the range within 9 % of the middle once the density is typed', () => {
    expect(reach).toBeLessThan(0.09)
    expect(reach).toBeGreaterThan(0.06)
  })

  it.each([
    ['all, 14 of 16', WEIGHED, 14],
    ['those that shaped the middle', shaped, 7],
    ['those that did not', held, 7],
  ] as const)('lie within 6 %% of the middle: %s', (_, rows, least) => {
    const near = rows.filter(([grams, volumeMm3]) => {
      return Math.abs(grams / midOf(volumeMm3) - 1) <= 0.06
    })
    expect(near.length).toBeGreaterThanOrEqual(least)
  })

  it('has its middle where those that did not shape it lie, to the scale’s whole gram', () => {
    const ratios = held.map(([grams, volumeMm3]) => grams / midOf(volumeMm3))
    const mean = ratios.reduce((sum, ratio) => sum + ratio, 0) / ratios.length
    expect(Math.abs(mean - 1)).toBeLessThan(0.03)
  })
})
