import { describe, expect, it } from 'vitest'
import { plasticsWorthALook, sameAs, whatIfAxes } from '../../../src/core/choose/whatIfAxes.ts'
import { MATERIALS } from '../../../src/core/data/materials.ts'
import { RECIPE_DEFAULTS } from '../../../src/core/model/settings.ts'

const WAY = { recipe: { ...RECIPE_DEFAULTS, infillPct: 22 }, materialId: 'pla' }

describe('whatIfAxes', () => {
  const axes = whatIfAxes(WAY, MATERIALS.slice(0, 3))

  it('moves one setting at a time, the present one among its values', () => {
    for (const { key, ways } of axes) {
      expect([key, ways.filter(({ way }) => sameAs(WAY, way)).length]).toEqual([key, 1])
      const values = ways.map(({ value }) => value)
      expect(values).toEqual(values.toSorted((a, b) => a - b))
    }
    const changed = axes.flatMap(({ ways }) =>
      ways.map(({ way: { recipe, materialId } }) => {
        const keys = Object.keys(recipe) as (keyof typeof recipe)[]
        const others = keys.filter(
          (key) => recipe[key] !== WAY.recipe[key] && key !== 'bottomSkins',
        )
        return others.length + (materialId === 'pla' ? 0 : 1)
      }),
    )
    expect(Math.max(...changed)).toBe(1)
  })

  it('has layers counted only for what they hang on', () => {
    const counted = axes.filter(({ ways }) => ways.some(({ patch }) => patch !== null))
    expect(counted.map(({ key }) => key)).toEqual(['walls', 'skins', 'layer'])
  })
})

describe('plasticsWorthALook', () => {
  it('has those in use, and of the others the lightest, the cheapest and the stiffest', () => {
    const some = plasticsWorthALook(MATERIALS, new Set(['pla']))
    const rest = MATERIALS.filter(({ id }) => id !== 'pla')
    const youngs = Math.max(...rest.map(({ youngsGPa }) => youngsGPa.value))
    const price = Math.min(...rest.map(({ pricePerKg }) => pricePerKg.value))
    expect(some.map(({ id }) => id)).toContain('pla')
    expect(some.some(({ youngsGPa }) => youngsGPa.value === youngs)).toBe(true)
    expect(some.some(({ pricePerKg }) => pricePerKg.value === price)).toBe(true)
    expect(some.length).toBeLessThanOrEqual(4)
  })
})
