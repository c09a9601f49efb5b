import { describe, expect, test } from 'vitest'
import { affordableStride } from '../../../src/core/census/budget.ts'
import { BUDGET_S } from '../../../src/core/model/census.ts'
import { countLayers } from '../../../src/core/census/countLayers.ts'
import { countAllLayers } from '../../../src/core/census/countAllLayers.ts'
import { MATERIALS } from '../../../src/core/data/materials.ts'
import { PRICES_DEFAULTS } from '../../../src/core/data/prices.ts'
import { PRINTER_DEFAULT } from '../../../src/core/data/printers.ts'
import { partFigures } from '../../../src/core/figures/part.ts'
import { layerFindings } from '../../../src/core/figures/layerFindings.ts'
import { placeMesh } from '../../../src/core/mesh/pose.ts'
import type { Census } from '../../../src/core/model/census.ts'
import { POSE_AS_DRAWN, RECIPE_DEFAULTS } from '../../../src/core/model/settings.ts'
import { sphere } from '../../support/meshes.ts'

const BALL = sphere(20, 64)

/** A count whose every question about the time finds `stepS` more gone. */
function count(stepS: number, startS = 0) {
  let spentS = startS
  let counted = 0
  const coarse: Census[] = []
  const census = countLayers({ part: BALL, zones: [] }, 1, POSE_AS_DRAWN, RECIPE_DEFAULTS, {
    budget: { spentS: () => (spentS += stepS) },
    onCoarse: (one) => coarse.push(one),
    onProgress: () => counted++,
  })
  return { census, coarse, counted, spentS }
}

describe('a count within its time', () => {
  test('is the full one', () => {
    const { census, counted } = count(0.01)
    expect(census.coarseMm3).toBe(0)
    expect(census).toEqual(countAllLayers(placeMesh(BALL, 1, POSE_AS_DRAWN), RECIPE_DEFAULTS))
    expect(counted).toBe(census.layers.count)
  })
})

describe('a count that takes too long', () => {
  const full = countAllLayers(placeMesh(BALL, 1, POSE_AS_DRAWN), RECIPE_DEFAULTS)
  const figures = (census: Census) =>
    partFigures(census, RECIPE_DEFAULTS, MATERIALS[0]!, PRINTER_DEFAULT, PRICES_DEFAULTS)

  test.each([
    ['some way in', 0.2, 0],
    ['before it began', 0, BUDGET_S],
  ])(
    '%s: is given up for a coarse one, which says so and holds the full one',
    (_, stepS, startS) => {
      const { census, counted, spentS } = count(stepS, startS)
      expect(counted).toBeLessThan(full.layers.count)
      expect(spentS).toBeLessThanOrEqual(BUDGET_S + 1e-9)
      expect(census.coarseMm3).toBeGreaterThan(0)
      expect(census.layers.count).toBe(full.layers.count)
      for (const key of ['massG', 'timeS', 'cost'] as const) {
        expect(figures(full)[key].mid).toBeGreaterThan(figures(census)[key].low)
        expect(figures(full)[key].mid).toBeLessThan(figures(census)[key].high)
      }
      expect(layerFindings([], census)).toMatchObject([
        { code: 'counted-coarsely', grade: 'changes the grams' },
      ])
      expect(layerFindings([], full)).toEqual([])
    },
  )

  test('keeps the coarse one that was made first', () => {
    const { census, coarse } = count(0.2)
    expect(census).toBe(coarse[0])
  })

  test('counts the fewer layers the longer each takes, and of all parts some', () => {
    expect(affordableStride(100, 1e-4)).toBe(8)
    expect(affordableStride(100, 0.2)).toBe(32)
    expect(affordableStride(1000, 5)).toBe(333)
  })
})
