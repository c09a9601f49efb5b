import { describe, expect, it } from 'vitest'
import { insertMass, insertSeat } from '../../../../src/core/aircraft/hardware/insert.ts'

describe('insertMass', () => {
  // Tube 4.4 mm outside, 2.675 mm bore, brass, 15 % knurl relief; no published mass was found.
  it.each([
    [5.7, 0.39],
    [4, 0.28],
  ])('weighs an M3 × %s about %s g', (lengthMm, massG) => {
    const found = insertMass({ size: 'M3', lengthMm })
    expect(Math.abs(found.massG / massG - 1)).toBeLessThan(0.05)
    expect(found).toMatchObject({ basis: 'computed', spreadPct: 20 })
  })

  it('says that M2 is from memory', () => {
    expect(insertMass({ size: 'M2', lengthMm: 3 }).basis).toBe('memory')
  })
})

describe('insertSeat', () => {
  // Holes: accu.co.uk/p/488. Least wall 0.25 × insert diameter and depth L + 1: secam-fixing.com.
  // Full pull-out takes 2.4 mm all round: TU Dresden, J. Manuf. Mater. Process. 2023, 7(1), 42.
  it('wants a 4.0 mm hole, a 9.2 mm boss, never below 6.6, and a depth of length + 1 for M3', () => {
    const seat = insertSeat('M3', 5.7)
    expect(seat.holeMm).toBe(4)
    expect(seat.bossMm).toBeCloseTo(9.2, 9)
    expect(seat.leastBossMm).toBeCloseTo(6.6, 9)
    expect(seat.depthMm).toBeCloseTo(6.7, 9)
  })

  it('wants 5.6 mm for M4 and 6.4 mm for M5', () => {
    expect(insertSeat('M4', 8).holeMm).toBe(5.6)
    expect(insertSeat('M5', 9.5).holeMm).toBe(6.4)
  })
})
