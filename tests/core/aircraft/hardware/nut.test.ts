import { describe, expect, it } from 'vitest'
import { nutHeightMm, nutMass } from '../../../../src/core/aircraft/hardware/nut.ts'

describe('nutMass', () => {
  // By shape from BS EN ISO 4032:2001 table 1 and DIN 934, sharp hex down to chamfered; M3 cannot
  // pass 0.39 g.
  it.each([
    ['ISO 4032', 'M2', 0.134, 0.144],
    ['ISO 4032', 'M2.5', 0.26, 0.28],
    ['ISO 4032', 'M3', 0.34, 0.4],
    ['ISO 4032', 'M4', 0.72, 0.84],
    ['ISO 4032', 'M5', 1.3, 1.48],
    ['DIN 934', 'M5', 1.1, 1.26],
  ] as const)('weighs a steel %s %s between %s and %s g', (standard, size, low, high) => {
    const { massG, basis } = nutMass({ standard, size, material: 'steel' })
    expect(massG).toBeGreaterThanOrEqual(low)
    expect(massG).toBeLessThanOrEqual(high)
    expect(basis).toBe('computed')
  })

  // DIN 985:1987 as quoted by fasten.it, kg per 1000 at 7.85 g/cm³.
  it.each([
    ['M3', 0.5, 0.15],
    ['M4', 1, 0.15],
    ['M5', 1.4, 0.12],
  ] as const)('weighs a locknut %s as published', (size, publishedG, within) => {
    const { massG, basis } = nutMass({ standard: 'ISO 7040', size, material: 'steel' })
    expect(Math.abs(massG / publishedG - 1)).toBeLessThanOrEqual(within)
    expect(basis).toBe('published')
  })

  it('weighs other materials by density and then calls it computed', () => {
    const steel = nutMass({ standard: 'ISO 7040', size: 'M3', material: 'steel' })
    const titanium = nutMass({ standard: 'ISO 7040', size: 'M3', material: 'titanium' })
    expect(titanium.massG / steel.massG).toBeCloseTo(4.43 / 7.85, 3)
    expect(titanium.basis).toBe('computed')
  })

  it('gives a locknut the height over its ring', () => {
    expect(nutHeightMm('ISO 7040', 'M3')).toBe(4)
    expect(nutHeightMm('ISO 4032', 'M3')).toBe(2.4)
  })

  it('names the size a standard does not have', () => {
    expect(() => nutMass({ standard: 'ISO 7040', size: 'M2', material: 'steel' })).toThrow(
      'ISO 7040 has no M2.',
    )
  })
})
