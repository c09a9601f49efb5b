import { describe, expect, it } from 'vitest'
import { MATERIALS } from '../../../src/core/data/materials.ts'

/*
 * Ranges of published data: makers' sheets and handbooks as named in src/core/data/materials.ts.
 * PA12 is from memory and gates nothing beyond being the number that was meant.
 */
const DENSITY_RANGES: Readonly<Record<string, readonly [number, number]>> = {
  pla: [1.17, 1.32],
  'tough-pla': [1.2, 1.24],
  'foaming-pla': [1.17, 1.24],
  abs: [1.02, 1.12],
  asa: [1.05, 1.13],
  petg: [1.23, 1.3],
  pc: [1.19, 1.21],
  pa6: [1.12, 1.16],
  pa12: [1.01, 1.03],
  'pa6-cf': [1.17, 1.19],
  'petg-cf': [1.27, 1.3],
  'pa12-cf': [1, 1.06],
  'tpu-95a': [1.16, 1.23],
  pp: [0.9, 0.91],
}

describe('built-in materials', () => {
  it('are the fourteen that airframes are printed in', () => {
    expect(MATERIALS.map((material) => material.id)).toEqual(Object.keys(DENSITY_RANGES))
  })

  it.each(MATERIALS.map((material) => [material.name, material] as const))(
    '%s has a density inside the published range',
    (_, material) => {
      const [low, high] = DENSITY_RANGES[material.id]!
      expect(material.densityRangeGCm3).toEqual([low, high])
      expect(material.densityGCm3.value).toBeGreaterThanOrEqual(low)
      expect(material.densityGCm3.value).toBeLessThanOrEqual(high)
      expect(material.densityTyped).toBe(false)
    },
  )

  it('plain PLA is 1.24 g/cm³', () => {
    expect(MATERIALS[0]!.densityGCm3.value).toBe(1.24)
  })

  it.each(MATERIALS.map((material) => [material.name, material] as const))(
    '%s says where each value comes from',
    (_, material) => {
      const { densityGCm3, pricePerKg, youngsGPa, strengthInPlaneMPa, strengthAcrossMPa } = material
      const { heatLimitC, shrinkagePct } = material
      for (const value of [
        densityGCm3,
        pricePerKg,
        youngsGPa,
        strengthInPlaneMPa,
        strengthAcrossMPa,
        heatLimitC,
        shrinkagePct,
      ]) {
        expect(value.value).toBeGreaterThan(0)
        expect(value.source.length).toBeGreaterThan(5)
        expect(/from memory/.test(value.source)).toBe(value.mark === 'memory')
      }
      expect(pricePerKg.mark).toBe('common practice')
    },
  )

  // Makers' sheets: strength across the layers is 0.73–0.89 of that in plane unfilled, about half
  // with short fibre.
  it.each(MATERIALS.map((material) => [material.name, material] as const))(
    '%s is weaker across the layers by the published share',
    (_, material) => {
      const ratio = material.strengthAcrossMPa.value / material.strengthInPlaneMPa.value
      const fibre = material.id.endsWith('-cf')
      expect(ratio).toBeGreaterThanOrEqual(fibre ? 0.45 : 0.73)
      expect(ratio).toBeLessThanOrEqual(fibre ? 0.55 : 0.895)
    },
  )
})
