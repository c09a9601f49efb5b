import { describe, expect, it } from 'vitest'
import { standoffMass } from '../../../../src/core/aircraft/hardware/standoff.ts'
import { tubeMass } from '../../../../src/core/aircraft/hardware/tube.ts'

describe('standoffMass', () => {
  // Worked by hand: 5.5 mm across flats or 5 mm round, bored 2.675 mm through; g per mm.
  it.each([
    ['hex', 'aluminium', 0.0556],
    ['hex', 'nylon', 0.0235],
    ['hex', 'brass', 0.175],
    ['round', 'aluminium', 0.0378],
  ] as const)('weighs an M3 %s of %s %s g per mm', (shape, material, perMm) => {
    const { massG, source } = standoffMass({ shape, size: 'M3', lengthMm: 30, material })
    expect(Math.abs(massG / 30 / perMm - 1)).toBeLessThan(0.03)
    expect(source).toContain('computed from shape')
  })

  it('takes a width of the builder’s own', () => {
    const make = (acrossMm: number) =>
      standoffMass({ shape: 'hex', size: 'M3', lengthMm: 20, material: 'nylon', acrossMm }).massG
    expect(make(5)).toBeLessThan(make(5.5))
    expect(() => make(2.6)).toThrow('2.6 mm wide')
  })
})

describe('tubeMass', () => {
  it('weighs a carbon tube by its ring', () => {
    // 10/8 mm: π/4·(100 − 64) = 28.27 mm² at 1.55 g/cm³.
    const { massG } = tubeMass({ outerMm: 10, innerMm: 8, lengthMm: 1000, material: 'carbon' })
    expect(massG).toBeCloseTo(43.8, 1)
  })

  it('refuses a bore wider than the tube', () => {
    expect(() => tubeMass({ outerMm: 8, innerMm: 10, lengthMm: 100, material: 'carbon' })).toThrow(
      '8 mm outside',
    )
  })
})
