import { describe, expect, it } from 'vitest'
import { MATERIALS } from '../../../src/core/data/materials.ts'
import { PRICES_DEFAULTS } from '../../../src/core/data/prices.ts'
import { PRINTER_DEFAULT } from '../../../src/core/data/printers.ts'
import { ROLES } from '../../../src/core/data/roles.ts'
import { partFigures } from '../../../src/core/figures/part.ts'
import { roughFigures } from '../../../src/core/figures/rough.ts'
import type { Recipe } from '../../../src/core/model/settings.ts'
import { RECIPE_DEFAULTS } from '../../../src/core/model/settings.ts'
import { countAllLayers } from '../../../src/core/census/countAllLayers.ts'
import type { Mesh } from '../../../src/core/model/mesh.ts'
import { motionParts } from '../../support/motionParts.ts'
import { blockCensus } from '../../support/blockCensus.ts'

const PLA = MATERIALS[0]!
const rough = (volumeMm3: number, areaMm2: number, recipe: Recipe) =>
  roughFigures({ volumeMm3, areaMm2 }, recipe, PLA, PRINTER_DEFAULT, PRICES_DEFAULTS)

/** Summed over the triangles. mm² */
function areaOf({ positions, indices }: Mesh): number {
  let sum = 0
  for (let i = 0; i < indices.length; i += 3) {
    const [p, q, r] = [0, 1, 2].map((k) => positions.subarray(3 * indices[i + k]!)) as [
      Float64Array,
      Float64Array,
      Float64Array,
    ]
    const [a, b, c] = [q[0]! - p[0]!, q[1]! - p[1]!, q[2]! - p[2]!]
    const [d, e, f] = [r[0]! - p[0]!, r[1]! - p[1]!, r[2]! - p[2]!]
    sum += Math.hypot(b * f - c * e, c * d - a * f, a * e - b * d) / 2
  }
  return sum
}

describe('roughFigures', () => {
  it.each([
    ['a cube', 20, 20, 20],
    ['an arm', 112, 14, 5],
    ['a deck', 140, 64, 4],
    ['a tall thin post', 6, 6, 60],
    ['a big block', 100, 80, 60],
  ])('holds the counted mass and hours of %s inside its range', (_, w, d, h) => {
    const area = 2 * (w * d + d * h + w * h)
    for (const recipe of [RECIPE_DEFAULTS, ROLES.arm.recipe, ROLES.plate.recipe]) {
      const guess = rough(w * d * h, area, recipe)
      const counted = partFigures(
        blockCensus(w, d, h, recipe),
        recipe,
        PLA,
        PRINTER_DEFAULT,
        PRICES_DEFAULTS,
      )
      expect(counted.massG.mid).toBeGreaterThan(guess.massG.low)
      expect(counted.massG.mid).toBeLessThan(guess.massG.high)
      expect(counted.timeS.mid).toBeGreaterThan(guess.timeS.low)
      expect(counted.timeS.mid).toBeLessThan(guess.timeS.high)
      expect(Math.abs(guess.massG.mid / counted.massG.mid - 1)).toBeLessThan(0.3)
    }
  })

  // The oracle is the count itself. These parts are among those measured in figures/rough.ts.
  it('comes near the count of varied parts, and holds all but a cone in its range', () => {
    const outside: string[] = []
    const misses = motionParts(false).map(({ name, mesh }) => {
      const { positions, indices } = mesh()
      const recipe = { ...RECIPE_DEFAULTS, infillPct: 15 }
      const census = countAllLayers({ positions, indices }, recipe)
      const guess = rough(census.modelMm3, areaOf({ positions, indices }), recipe)
      const counted = partFigures(census, recipe, PLA, PRINTER_DEFAULT, PRICES_DEFAULTS)
      const { low, high } = guess.massG
      if (counted.massG.mid < low || counted.massG.mid > high) outside.push(name)
      return Math.abs(guess.massG.mid / counted.massG.mid - 1)
    })
    // Measured 9.0 % in the middle. All slopes up to a tip: bands under them make it nearly solid.
    expect(outside).toEqual(['a cone'])
    expect(misses.toSorted((a, b) => a - b)[Math.floor(misses.length / 2)]).toBeLessThan(0.1)
  }, 60_000)

  it('is a full solid at 100 %, whatever the area', () => {
    const { depositMm3, turnShare } = rough(8000, 2400, { ...RECIPE_DEFAULTS, infillPct: 100 })
    expect(depositMm3).toBeCloseTo(8000, 6)
    expect(turnShare).toBe(0)
  })

  it('is never more plastic than volume, and orders its ends', () => {
    for (const area of [0, 100, 1e4, 1e9]) {
      const { depositMm3, massG, timeS, cost } = rough(8000, area, RECIPE_DEFAULTS)
      expect(depositMm3).toBeLessThanOrEqual(8000 + 1e-6)
      for (const { low, mid, high } of [massG, timeS, cost]) {
        expect(low).toBeLessThanOrEqual(mid)
        expect(mid).toBeLessThanOrEqual(high)
      }
    }
  })

  it('is all zero for an empty mesh and for settings without walls or skins', () => {
    expect(rough(0, 0, RECIPE_DEFAULTS).massG.high).toBe(0)
    const bare = { ...RECIPE_DEFAULTS, walls: 0, topSkins: 0, bottomSkins: 0, infillPct: 0 }
    const { massG, filamentM } = rough(8000, 2400, bare)
    expect([massG.low, massG.mid, massG.high, filamentM.mid]).toEqual([0, 0, 0, 0])
  })
})
