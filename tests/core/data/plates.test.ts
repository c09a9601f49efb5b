import { describe, expect, it } from 'vitest'
import { PLATES } from '../../../src/core/data/plates.ts'
import { plateBendingNm } from '../../../src/core/aircraft/twin/bending.ts'
import { plateMassG } from '../../../src/core/aircraft/twin/flatTwin.ts'
import { relative } from '../../support/censusCase.ts'

describe('plate stock', () => {
  it('of 100 × 100 × 2 mm carbon weighs 30.0 to 32.0 g (1.50–1.60 g/cm³)', () => {
    const { densityGCm3, densityRangeGCm3 } = PLATES.carbon
    expect(plateMassG(10_000, 2, densityRangeGCm3[0])).toBeCloseTo(30, 9)
    expect(plateMassG(10_000, 2, densityRangeGCm3[1])).toBeCloseTo(32, 9)
    expect(relative(plateMassG(10_000, 2, densityGCm3.value), 31)).toBeLessThan(0.04)
  })

  it('of 2 mm at 66 GPa (EP-CF60 woven, 62.7–68.7) bends at 44 N·m² a metre; twice as thick, 8 times as stiff', () => {
    expect(plateBendingNm(66, 2)).toBeCloseTo(44, 9)
    expect(plateBendingNm(62.7, 2)).toBeGreaterThan(41.7)
    expect(plateBendingNm(68.7, 2)).toBeLessThan(46)
    expect(plateBendingNm(66, 4) / plateBendingNm(66, 2)).toBeCloseTo(8, 12)
    expect(plateMassG(10_000, 4, 1.55) / plateMassG(10_000, 2, 1.55)).toBeCloseTo(2, 12)
  })

  it('keeps quasi-isotropic carbon at 45–55 GPa, never the 70 of its cloth', () => {
    // Quasi-isotropic from the cloth row of performance-composites.com: E = U-invariants of 70/70/5
    // GPa, ν 0.10.
    const q11 = 70 / (1 - 0.1 ** 2)
    const q12 = 0.1 * q11
    const u1 = (6 * q11 + 2 * q12 + 4 * 5) / 8
    const u4 = (2 * q11 + 6 * q12 - 4 * 5) / 8
    const modulus = ((u1 - u4) * (u1 + u4)) / u1
    const { youngsGPa, youngsRangeGPa } = PLATES.carbon
    expect(relative(youngsGPa.value, modulus)).toBeLessThan(0.01)
    expect(youngsRangeGPa).toEqual([45, 55])
  })

  it.each(Object.values(PLATES))(
    '$name has values inside their ranges and sizes in order',
    (plate) => {
      const inside = (value: number, [low, high]: readonly [number, number]) =>
        value >= low && value <= high
      expect(inside(plate.densityGCm3.value, plate.densityRangeGCm3)).toBe(true)
      expect(inside(plate.youngsGPa.value, plate.youngsRangeGPa)).toBe(true)
      expect(plate.stockedMm).toEqual(plate.stockedMm.toSorted((a, b) => a - b))
      expect(plate.caution.length).toBeGreaterThan(20)
    },
  )

  it('agrees with the handbook ranges read: G10 1.80–1.85, 15–25 GPa; 6061-T6 2.71–2.73, 68.9 GPa', () => {
    expect(PLATES.g10.densityRangeGCm3).toEqual([1.8, 1.85])
    expect(PLATES.g10.youngsGPa.value).toBe(18.6)
    expect(PLATES.aluminium.densityRangeGCm3).toEqual([2.71, 2.73])
    expect(PLATES.aluminium.youngsGPa.value).toBe(68.9)
    expect(PLATES.plywood.youngsGPa.mark).toBe('memory')
  })
})
