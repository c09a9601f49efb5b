import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { moveTime } from '../../../src/core/figures/kinematics.ts'

describe('moveTime', () => {
  // Physics: t = L/v + v/a if L ≥ v²/a, else 2·√(L/a).
  it.each([
    [10, 50, 500, 0.3],
    [10, 100, 500, 0.28284],
    [1, 60, 1000, 0.06325],
    [3.6, 60, 1000, 0.12],
    [100, 60, 1000, 1.72667],
    [20, 200, 10_000, 0.12],
  ])('%s mm at %s mm/s and %s mm/s² from rest to rest takes %s s', (length, v, a, seconds) => {
    expect(Math.abs(moveTime(length, v, a) - seconds)).toBeLessThan(1e-5)
  })

  const speed = fc.double({ min: 1, max: 500, noNaN: true })
  const accel = fc.double({ min: 50, max: 20_000, noNaN: true })
  const length = fc.double({ min: 0.001, max: 500, noNaN: true })

  it('never takes less than at full speed throughout, and longer moves take longer', () => {
    fc.assert(
      fc.property(length, length, speed, accel, speed, (a, b, v, acc, ends) => {
        expect(moveTime(a, v, acc, ends)).toBeGreaterThanOrEqual(a / v - 1e-9)
        expect(moveTime(a + b, v, acc, ends)).toBeGreaterThan(moveTime(a, v, acc, ends))
      }),
      { seed: 1 },
    )
  })

  it('is continuous where the triangle turns into a trapezoid', () => {
    fc.assert(
      fc.property(speed, accel, fc.double({ min: 0, max: 0.99, noNaN: true }), (v, a, part) => {
        const ends = v * part
        const edge = (v * v - ends * ends) / a
        const below = moveTime(edge * (1 - 1e-9), v, a, ends)
        const above = moveTime(edge * (1 + 1e-9), v, a, ends)
        expect(Math.abs(above - below)).toBeLessThan(1e-6)
      }),
      { seed: 2 },
    )
  })

  it('comes to length over speed with endless acceleration or ends at full speed', () => {
    expect(moveTime(50, 100, 1e12)).toBeCloseTo(0.5, 8)
    expect(moveTime(50, 100, 1000, 100)).toBe(0.5)
    expect(moveTime(50, 100, 1000, 400)).toBe(0.5)
  })

  it('takes no time for no length', () => {
    expect(moveTime(0, 100, 1000)).toBe(0)
  })
})
