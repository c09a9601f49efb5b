import { describe, expect, it } from 'vitest'
import { stallSpeedMS, wingLoading } from '../../../../src/core/aircraft/flight/wing.ts'

describe('wing loading', () => {
  it('of 520 g on 15.4 dm²: 33.8 g/dm², 8.6 oz/ft³, stall near 7.0 m/s (worked by hand)', () => {
    const loading = wingLoading({ areaDm2: 15.4 }, 520)
    expect(loading?.areaLoadingGDm2).toBeCloseTo(33.77, 2)
    expect(loading?.cubeLoadingOzFt3).toBeCloseTo(8.59, 2)
    expect(loading?.stallMS.mid).toBeCloseTo(7.01, 2)
    expect(loading?.stallMS.low).toBeLessThan(7.01)
    expect(loading?.stallMS.high).toBeGreaterThan(7.01)
  })

  it('agrees with its own unit: 1 oz on 1 ft² is a cube loading of 1', () => {
    expect(wingLoading({ areaDm2: 9.290304 }, 28.349523125)?.cubeLoadingOzFt3).toBeCloseTo(1, 12)
  })

  it('stalls where lift at the largest coefficient carries the weight (½ ρ v² S CL = m g)', () => {
    const speed = stallSpeedMS(1000, 20, 1.2)
    expect(0.5 * 1.225 * speed ** 2 * 0.2 * 1.2).toBeCloseTo(9.80665, 9)
  })

  it('is missing without an area or a mass', () => {
    expect(wingLoading({ areaDm2: 0 }, 520)).toBeNull()
    expect(wingLoading({ areaDm2: 15 }, 0)).toBeNull()
  })
})
