import { describe, expect, it } from 'vitest'
import { filamentAreaMm2, filamentLengthM } from '../../../src/core/figures/filament.ts'

describe('filament', () => {
  // Geometry; the rules of thumb read are about 330 m of PLA and 400 m of ABS to the kilogram.
  it.each([
    [1.75, 2.4053],
    [2.85, 6.3794],
  ])('of %s mm has a section of %s mm²', (diameter, area) => {
    expect(filamentAreaMm2(diameter)).toBeCloseTo(area, 4)
  })

  it.each([
    ['PLA', 1.24, 1.75, 335.3],
    ['ABS', 1.04, 1.75, 399.8],
    ['PETG', 1.27, 1.75, 327.4],
    ['PLA', 1.24, 2.85, 126.4],
    ['ABS', 1.04, 2.85, 150.7],
  ])('a kilogram of %s (%s g/cm³) of %s mm is %s m long', (_, density, diameter, metres) => {
    expect(Math.abs(filamentLengthM(1e6 / density, diameter) - metres)).toBeLessThan(0.1)
  })

  // Worked example read at fabbaloo.com, 19 December 2018.
  it('11.4 cm³ of 2.85 mm filament is 178.7 cm', () => {
    expect(Math.abs(100 * filamentLengthM(11_400, 2.85) - 178.7)).toBeLessThan(0.05)
  })

  it('a metre of 1.75 mm is 2.405 cm³', () => {
    expect(Math.abs(filamentAreaMm2(1.75) - 2.405)).toBeLessThan(0.001)
  })

  it('0.05 mm more diameter is 5.8 % more mass for the same length', () => {
    expect(filamentAreaMm2(1.8) / filamentAreaMm2(1.75)).toBeCloseTo(1.058, 4)
  })
})
