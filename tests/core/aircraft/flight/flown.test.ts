import { describe, expect, it } from 'vitest'
import type { FlownHover } from '../../../../src/core/model/aircraft.ts'
import { seededRandom } from '../../../../src/core/aircraft/season/random.ts'
import { hoverOf } from '../../../support/flight.ts'

const PROPS = { motors: 4, propDiameterMm: 254 }
/** A hover of 1.5 kg with electronics of 5 W whose lifting power is `times` the estimate's. */
const flownAt = (times: number, auwG = 1500): FlownHover => {
  const { hoverW } = hoverOf({}, auwG)
  const watts = (hoverW.mid - 5) * times + 5
  return { ...PROPS, minutes: 10, usedWh: watts / 6, auwG }
}

describe('a timed hover', () => {
  it('as estimated leaves the middle and narrows the range', () => {
    const before = hoverOf({}, 1500)
    const after = hoverOf({ flown: flownAt(1) }, 1500)
    expect(after.hoverMin.mid).toBeCloseTo(before.hoverMin.mid, 9)
    const width = ({ low, high }: { low: number; high: number }) => high - low
    expect(width(after.hoverMin)).toBeLessThan(0.5 * width(before.hoverMin))
    expect(after.lesson?.verdict).toBe('used')
  })

  it('meets the posterior of two normal densities, drawn by rejection (seeded Monte Carlo)', () => {
    // Prior of ln efficiency sd 0.3 / 1.96 about 0; observed ln(1/1.2) with sd 0.06: keep draws by
    // the observation's density.
    const random = seededRandom(5)
    const normal = () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random())
    const observed = -Math.log(1.2)
    const kept: number[] = []
    while (kept.length < 20_000) {
      const drawn = (normal() * 0.3) / 1.96
      if (random() < Math.exp(-0.5 * ((drawn - observed) / 0.06) ** 2)) kept.push(drawn)
    }
    const mean = kept.reduce((sum, value) => sum + value, 0) / kept.length
    const sd = Math.sqrt(kept.reduce((sum, value) => sum + (value - mean) ** 2, 0) / kept.length)
    const before = hoverOf({}, 1500).efficiency
    const after = hoverOf({ flown: flownAt(1.2) }, 1500).efficiency
    expect(Math.log(after.mid / before.mid)).toBeCloseTo(mean, 2)
    expect(Math.log(after.high / after.mid) / 1.96).toBeCloseTo(sd, 2)
  })

  it('at another mass is carried over, with less to say the farther away', () => {
    const flown = flownAt(1.2)
    const width = (auwG: number) => {
      const { low, high } = hoverOf({ flown }, auwG).efficiency
      return high / low
    }
    const near = hoverOf({ flown }, 1600).efficiency.mid / hoverOf({}, 1600).efficiency.mid
    expect(near).toBeCloseTo(
      hoverOf({ flown }, 1500).efficiency.mid / hoverOf({}, 1500).efficiency.mid,
      9,
    )
    expect(width(1600)).toBeGreaterThan(width(1500))
    expect(width(3000)).toBeGreaterThan(width(1600))
  })

  it('far from any estimate is asked about and bends nothing', () => {
    const plain = hoverOf({}, 1500)
    for (const times of [0.4, 3]) {
      const after = hoverOf({ flown: flownAt(times) }, 1500)
      expect(after.hoverMin).toEqual(plain.hoverMin)
      expect(after.notes.map(({ code }) => code)).toContain('flown-far')
    }
    const nothing = { ...PROPS, minutes: 100, usedWh: 1, auwG: 1500 }
    expect(hoverOf({ flown: nothing }, 1500).lesson).toEqual({ verdict: 'far', factor: 0 })
  })

  it('on other propellers is left aside, and that is said', () => {
    const after = hoverOf({ flown: flownAt(1.2), propDiameterMm: 280 }, 1500)
    expect(after.hoverMin).toEqual(hoverOf({ propDiameterMm: 280 }, 1500).hoverMin)
    expect(after.notes.map(({ code }) => code)).toContain('flown-other')
  })

  it('stands in for the measured craft that are missing', () => {
    const codes = (flown?: FlownHover) =>
      hoverOf({ propDiameterMm: 127, avionicsW: 0, ...(flown ? { flown } : {}) }, 139).notes.map(
        ({ code }) => code,
      )
    expect(codes()).toContain('not-validated')
    const { hoverW } = hoverOf({ propDiameterMm: 127, avionicsW: 0 }, 139)
    const flown = { motors: 4, propDiameterMm: 127, minutes: 6, usedWh: hoverW.mid / 10, auwG: 139 }
    expect(codes(flown)).not.toContain('not-validated')
  })
})
