import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { WingSetup } from '../../../../src/core/model/aircraft.ts'
import {
  packSlideMm,
  trimWeightG,
  wingBalance,
} from '../../../../src/core/aircraft/balance/wingBalance.ts'

const WING: WingSetup = {
  areaDm2: 15.4,
  meanChordMm: 140,
  leadingEdgeMm: 0,
  balanceMm: [35, 49],
}

describe('balance of a plane', () => {
  it('tells where along the chord it lies and on which side of the range', () => {
    expect(wingBalance(WING, -42)).toMatchObject({
      behindMm: 42,
      chordShare: 0.3,
      verdict: 'inside',
      shiftMm: 0,
    })
    const tail = wingBalance(WING, -59)
    expect(tail).toMatchObject({ verdict: 'tail-heavy', shiftMm: 10 })
    expect(tail.words).toContain('59.0 mm')
    expect(tail.words).toContain('35 to 49 mm')
    expect(wingBalance(WING, -30)).toMatchObject({ verdict: 'nose-heavy', shiftMm: -5 })
  })

  it('counts both ends of the range as inside', () => {
    expect(wingBalance(WING, -35).verdict).toBe('inside')
    expect(wingBalance(WING, -49).verdict).toBe('inside')
  })

  it('needs m Δx over the arm in the nose: 520 g, 10 mm, 260 mm ahead is 20 g', () => {
    expect(trimWeightG(520, -59, 10, -49 + 260)).toBeCloseTo(20, 12)
  })

  it('lands exactly on the wanted point when the weight is added', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 100, max: 3000, noNaN: true }),
        fc.double({ min: -40, max: 40, noNaN: true }),
        fc.double({ min: 60, max: 400, noNaN: true }),
        (massG, shiftMm, reach) => {
          const weightX = Math.sign(shiftMm || 1) * reach
          const weight = trimWeightG(massG, 3, shiftMm, 3 + shiftMm + weightX)
          expect(weight).not.toBeNull()
          const after =
            (massG * 3 + (weight ?? 0) * (3 + shiftMm + weightX)) / (massG + (weight ?? 0))
          expect(after).toBeCloseTo(3 + shiftMm, 6)
        },
      ),
      { seed: 13 },
    )
  })

  it('knows when a weight there cannot do it', () => {
    expect(trimWeightG(520, -59, 10, -200)).toBeNull()
    expect(trimWeightG(520, -59, 10, -49)).toBeNull()
    expect(trimWeightG(520, -42, 0, 100)).toBe(0)
  })

  it('slides the pack m Δx over its own mass', () => {
    expect(packSlideMm(520, 10, 130)).toBe(40)
    expect(packSlideMm(520, 10, 0)).toBeNull()
  })
})
