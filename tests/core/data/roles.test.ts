import { describe, expect, it } from 'vitest'
import { RECIPE_LIMITS } from '../../../src/core/data/limits.ts'
import type { RecipeNumber } from '../../../src/core/data/limits.ts'
import { ROLES } from '../../../src/core/data/roles.ts'

describe('role presets', () => {
  // Common practice, no source: 0.2 mm layers, 0.8 mm walls, arms at 75 %, plates at 40 %.
  it('print arms dense and plates lighter, with 0.2 mm layers and 0.8 mm walls', () => {
    for (const { recipe } of [ROLES.arm, ROLES.plate]) {
      expect(recipe.layerMm).toBe(0.2)
      expect(recipe.walls * recipe.lineMm).toBeCloseTo(0.8, 10)
    }
    expect(ROLES.arm.recipe.infillPct).toBe(75)
    expect(ROLES.plate.recipe.infillPct).toBe(40)
  })

  it('make a wing skin a single wall and nothing else', () => {
    const { walls, topSkins, bottomSkins, infillPct } = ROLES['wing-skin'].recipe
    expect([walls, topSkins, bottomSkins, infillPct]).toEqual([1, 0, 0, 0])
  })

  it.each(Object.entries(ROLES))('%s is filed under its id and inside the limits', (id, role) => {
    expect(role.id).toBe(id)
    const outside = Object.entries(RECIPE_LIMITS).filter(([key, { min, max, whole }]) => {
      const value = role.recipe[key as RecipeNumber]
      return value < min || value > max || (whole && !Number.isInteger(value))
    })
    expect(outside).toEqual([])
  })
})
