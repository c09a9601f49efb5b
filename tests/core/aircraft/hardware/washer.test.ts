import { describe, expect, it } from 'vitest'
import { ringMm2, washerMass } from '../../../../src/core/aircraft/hardware/washer.ts'

const steel = (size: 'M2' | 'M3' | 'M4' | 'M5') => washerMass({ size, material: 'steel' })

describe('washerMass', () => {
  // Dimensions ISO 7089 (engineeringhardware.com), masses ajaxboltco.com/8/Washer/2.
  it.each([
    ['M5', 5.3, 10, 1, 0.443],
    ['M6', 6.4, 12, 1.6, 1.02],
    ['M8', 8.4, 16, 1.6, 1.83],
  ] as const)('reproduces the published %s by shape within 1 %%', (_, inner, outer, height, g) => {
    expect(Math.abs((ringMm2(outer, inner) * height * 7.85) / 1000 / g - 1)).toBeLessThan(0.01)
  })

  it('weighs M3 0.1195 g and M4 0.3083 g', () => {
    expect(steel('M3').massG).toBeCloseTo(0.1195, 4)
    expect(steel('M4').massG).toBeCloseTo(0.3083, 4)
  })

  it('says how it knows: M5 published, M3 computed, M2 from memory', () => {
    expect(steel('M5')).toMatchObject({ massG: 0.443, basis: 'published' })
    expect(steel('M3').basis).toBe('computed')
    expect(steel('M2').basis).toBe('memory')
    expect(steel('M2').spreadPct).toBeGreaterThan(steel('M3').spreadPct)
  })
})
