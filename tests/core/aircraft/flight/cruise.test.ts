import { describe, expect, it } from 'vitest'
import type { WingSetup } from '../../../../src/core/model/aircraft.ts'
import { cruise } from '../../../../src/core/aircraft/flight/cruise.ts'
import { relative } from '../../../support/censusCase.ts'
import { QUAD } from '../../../support/flight.ts'

const WING: WingSetup = {
  areaDm2: 20,
  spanMm: 1000,
  cruiseMS: 12,
  dragCoefficient: 0.04,
  meanChordMm: 200,
  leadingEdgeMm: 0,
  balanceMm: [50, 60],
}
const PACK = { ...QUAD, avionicsW: 0 }

describe('a plane in cruise', () => {
  /*
   * By hand: 1 kg on 0.2 m², 12 m/s: q = 88.2 Pa, CL = 9.80665 / 17.64 = 0.5559, aspect 5, induced
   * 0.5559² / (π·5·0.75) = 0.02623, drag 17.64 × 0.06623 = 1.1683 N, L/D 8.394; 14.02 W of push,
   * over 0.4 = 35.05 W; 74 Wh × 0.8 = 101.3 min, 73 km.
   */
  it('of 1 kg on 20 dm² and 1 m of span at 12 m/s takes 35 W (worked by hand)', () => {
    const { figures, missing } = cruise(WING, PACK, 1000)
    expect(missing).toEqual([])
    expect(relative(figures!.liftCoefficient, 0.5559)).toBeLessThan(1e-3)
    expect(relative(figures!.liftToDrag.mid, 8.394)).toBeLessThan(1e-3)
    expect(relative(figures!.powerW.mid, 35.05)).toBeLessThan(1e-3)
    expect(relative(figures!.minutes.mid, 101.3)).toBeLessThan(1e-3)
    expect(relative(figures!.distanceKm.mid, 72.95)).toBeLessThan(1e-3)
  })

  it('gives ranges that hold the middle, narrower with a drag coefficient typed', () => {
    const { dragCoefficient: _, ...plain } = WING
    const guessed = cruise(plain, PACK, 1000).figures!
    const typed = cruise(WING, PACK, 1000).figures!
    for (const { low, mid, high } of [guessed.powerW, guessed.minutes, guessed.liftToDrag]) {
      expect(low).toBeLessThan(mid)
      expect(mid).toBeLessThan(high)
    }
    expect(typed.powerW.high - typed.powerW.low).toBeLessThan(
      guessed.powerW.high - guessed.powerW.low,
    )
  })

  it('takes least power where induced drag is three times the rest (any text on flight mechanics)', () => {
    const slow = { ...WING, dragCoefficient: 0.008, areaDm2: 10 }
    const { easiestMS } = cruise(slow, PACK, 1000).figures!
    const power = (cruiseMS: number) =>
      cruise({ ...slow, cruiseMS }, PACK, 1000).figures!.powerW.mid
    expect(power(easiestMS)).toBeLessThanOrEqual(power(easiestMS * 1.02))
    const { figures } = cruise({ ...slow, cruiseMS: easiestMS }, PACK, 1000)
    expect(figures!.liftCoefficient).toBeLessThan(1.1)
  })

  it('warns of a speed near the stall', () => {
    // 1 kg on 20 dm² stalls below 9.4 m/s at a lift coefficient of 0.9: 1.2 times that is 11.3 m/s.
    expect(cruise({ ...WING, cruiseMS: 11 }, PACK, 1000).figures!.nearStall).toBe(true)
    expect(cruise(WING, PACK, 1000).figures!.nearStall).toBe(false)
  })

  it('says what is missing while a field is empty', () => {
    const { spanMm: _span, cruiseMS: _speed, ...empty } = WING
    expect(cruise(empty, null, 0)).toEqual({
      missing: ['a mass', 'the span', 'the cruise speed', 'motors and pack'],
      figures: null,
    })
  })
})
