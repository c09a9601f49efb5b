import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { hoverFigures } from '../../../../src/core/aircraft/flight/hover.ts'
import { packEnergyWh } from '../../../../src/core/aircraft/flight/pack.ts'
import { tipGapMm } from '../../../../src/core/aircraft/flight/rotors.ts'
import { thrustVerdict } from '../../../../src/core/aircraft/flight/thrust.ts'
import { relative } from '../../../support/censusCase.ts'
import { hoverOf, QUAD } from '../../../support/flight.ts'

const codes = (notes: readonly { readonly code: string }[]) => notes.map(({ code }) => code)

describe('thrust-to-weight', () => {
  /*
   * A maker's payload table for a four-rotor lifter (all-up lb, thrust-to-weight): consistent with
   * 67.9 kgf at full throttle.
   */
  it.each([
    [43.28, 3.5],
    [48.28, 3.1],
    [53.28, 2.8],
    [58.28, 2.6],
    [63.28, 2.4],
    [68.28, 2.2],
    [73.28, 2],
    [78.28, 1.9],
  ])('reproduces the published sweep at %f lb: %f within 3 %%', (pounds, ratio) => {
    const { thrustToWeight } = hoverOf({ motorThrustG: 67_900 / 4 }, pounds * 453.59237)
    expect(relative(thrustToWeight, ratio)).toBeLessThan(0.03)
  })

  it('is red below 1.5, amber below 2 and green from 2 on', () => {
    expect(thrustVerdict(0.99).level).toBe('red')
    expect(thrustVerdict(0.99).words).toContain('does not lift')
    expect(thrustVerdict(1.499).level).toBe('red')
    expect(thrustVerdict(1.5).level).toBe('amber')
    expect(thrustVerdict(1.999).level).toBe('amber')
    expect(thrustVerdict(2).level).toBe('green')
  })

  it('leaves payload until the mass is exactly half the thrust', () => {
    expect(hoverOf({ motorThrustG: 620, motors: 3 }, 612).payloadG).toBe(930 - 612)
    expect(hoverOf({ motorThrustG: 100 }, 250).payloadG).toBe(-50)
  })

  it('gives hover throttle by both rules', () => {
    const { hoverThrottle } = hoverOf({ motorThrustG: 1000 }, 1000)
    expect(hoverThrottle).toEqual({ squareRoot: 0.5, linear: 0.25 })
  })

  it('of less than 1 means no hover time, and says so with both numbers', () => {
    const figures = hoverOf({ motorThrustG: 100 }, 500)
    expect(figures.hoverMin).toEqual({ low: 0, mid: 0, high: 0 })
    expect(figures.sPerGram).toBe(0)
    const note = figures.notes.find(({ code }) => code === 'no-lift')
    expect(note?.message).toContain('400 g')
    expect(note?.message).toContain('500 g')
  })
})

describe('pack energy', () => {
  /* Makers' labels: 5.0 Ah at 15.4 V is 77.0 Wh; 9.248 Ah at 14.76 V is 136.5 Wh. */
  it.each([
    [4, 5000, 3.7, 74],
    [4, 1300, 3.7, 19.24],
    [6, 1300, 3.7, 28.86],
    [4, 5000, 15.4 / 4, 77],
    [4, 9248, 14.76 / 4, 136.5],
  ])('of %i cells, %f mAh, %f V is %f Wh', (packCells, packMah, voltsPerCell, wh) => {
    expect(relative(packEnergyWh({ packCells, packMah, voltsPerCell }), wh)).toBeLessThan(1e-4)
  })

  it('warns of a charged voltage typed as nominal above 4.0 V a cell only', () => {
    expect(codes(hoverOf({ voltsPerCell: 4.4 }, 1500).notes)).toContain('charged-voltage')
    expect(codes(hoverOf({ voltsPerCell: 4.2 }, 1500).notes)).toContain('charged-voltage')
    expect(codes(hoverOf({ voltsPerCell: 4.01 }, 1500).notes)).toContain('charged-voltage')
    expect(codes(hoverOf({ voltsPerCell: 4 }, 1500).notes)).not.toContain('charged-voltage')
    expect(codes(hoverOf({ voltsPerCell: 3.85 }, 1500).notes)).toEqual([])
  })

  it('warns of flying more than 90 % of it', () => {
    expect(codes(hoverOf({ usableShare: 0.95 }, 1500).notes)).toEqual(['deep-discharge'])
    expect(codes(hoverOf({ usableShare: 0.9 }, 1500).notes)).toEqual([])
  })

  it('lasts 14.4 min from 74 Wh at 246.6 W with 80 % used (a student design note: 59.2 Wh / 246.6 W)', () => {
    // Chosen so that the middle hover power is 246.6 W: only the division is checked.
    const bare = hoverOf({ avionicsW: 0 }, 1500).hoverW.mid
    const { hoverW, hoverMin } = hoverOf({ avionicsW: 246.6 - bare }, 1500)
    expect(hoverW.mid).toBeCloseTo(246.6, 9)
    expect(hoverMin.mid).toBeCloseTo(14.4, 1)
  })
})

describe('small craft', () => {
  it('without measured ones beside them are flagged, by what each propeller carries', () => {
    expect(hoverOf({}, 1500).validated).toBe(true)
    const light = hoverOf({}, 100)
    expect(light.validated).toBe(false)
    const note = light.notes.find(({ code }) => code === 'not-validated')
    expect(note?.message).toContain('254 mm')
    expect(note?.message).toContain('25 g on each')
  })

  it('of 28.6 g hover at the measured 7.74 W, not at an efficiency of 0.45 (Bitcraze rig)', () => {
    const setup = { propDiameterMm: 2 * 23.13, avionicsW: 0, motorThrustG: 14.5 }
    const { hoverW, idealW } = hoverOf(setup, 28.6)
    expect(idealW).toBeCloseTo(1.157, 3)
    expect(7.74).toBeGreaterThan(hoverW.low)
    expect(7.74).toBeLessThan(hoverW.high)
    expect(idealW / hoverW.mid).toBeGreaterThan(0.13)
    expect(idealW / hoverW.mid).toBeLessThan(0.2)
  })
})

describe('hover figures', () => {
  it('lose as many seconds for a gram as the slope says', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 150, max: 4000, noNaN: true }),
        fc.double({ min: 0, max: 60, noNaN: true }),
        (auwG, avionicsW) => {
          const seconds = (massG: number) => 60 * hoverOf({ avionicsW }, massG).hoverMin.mid
          const slope = (seconds(auwG + 0.05) - seconds(auwG - 0.05)) / 0.1
          expect(relative(hoverOf({ avionicsW }, auwG).sPerGram, slope)).toBeLessThan(1e-4)
        },
      ),
      { seed: 11 },
    )
  })

  it('hover 12 to 13.3 % shorter with 10 % more mass: time goes with mass^−1.5, less what a loaded disk gains', () => {
    const minutes = (massG: number) => hoverOf({ avionicsW: 0 }, massG).hoverMin.mid
    const longer = minutes(1100) / minutes(1000) - 1
    expect(longer).toBeGreaterThan(-0.133)
    expect(longer).toBeLessThan(-0.12)
    const { idealW, efficiency } = hoverOf({ avionicsW: 0 }, 1100)
    const before = hoverOf({ avionicsW: 0 }, 1000)
    // At one efficiency the momentum theory is left: 1.1^1.5.
    expect(idealW / before.idealW).toBeCloseTo(1.1 ** 1.5, 9)
    expect(efficiency.mid).toBeGreaterThan(before.efficiency.mid)
  })

  it('add avionics to every end of the power', () => {
    const bare = hoverOf({ avionicsW: 0 }, 1500).hoverW
    const laden = hoverOf({ avionicsW: 15 }, 1500).hoverW
    for (const end of ['low', 'mid', 'high'] as const) {
      expect(laden[end] - bare[end]).toBeCloseTo(15, 9)
    }
  })

  it('keep low ≤ mid ≤ high and never use more than the whole pack', () => {
    const { hoverW, hoverMin } = hoverOf({ usableShare: 5 }, 1500)
    expect(hoverW.low).toBeLessThan(hoverW.mid)
    expect(hoverW.mid).toBeLessThan(hoverW.high)
    expect(hoverMin.low).toBeLessThan(hoverMin.mid)
    expect(hoverMin.high * hoverW.low).toBeCloseTo(60 * 74, 6)
  })

  it('are missing while a number they need is zero, negative or not a number', () => {
    expect(hoverFigures(QUAD, 0)).toBeNull()
    expect(hoverFigures(QUAD, Number.NaN)).toBeNull()
    expect(hoverFigures({ ...QUAD, motors: 0 }, 1000)).toBeNull()
    expect(hoverFigures({ ...QUAD, propDiameterMm: -1 }, 1000)).toBeNull()
    expect(hoverFigures({ ...QUAD, packMah: 0 }, 1000)).toBeNull()
  })

  it('need more power in thin air: by the root of the density', () => {
    const thin = hoverFigures({ ...QUAD, avionicsW: 0 }, 1500, 1.225 / 4)
    expect(thin?.hoverW.mid).toBeCloseTo(2 * hoverOf({ avionicsW: 0 }, 1500).hoverW.mid, 9)
  })
})

describe('propeller room', () => {
  it('is 28.6 mm between 127 mm propellers on a 220 mm square X', () => {
    const gap = tipGapMm({ motors: 4, motorRadiusMm: 110, propDiameterMm: 127 })
    expect(gap).toBeCloseTo(28.6, 1)
    expect(tipGapMm({ motors: 1, motorRadiusMm: 110, propDiameterMm: 127 })).toBeNull()
  })

  it('is noted when propellers overlap or pass within a fifth of their diameter', () => {
    expect(codes(hoverOf({ motorRadiusMm: 150 }, 1500).notes)).toEqual(['props-strike'])
    expect(codes(hoverOf({ motorRadiusMm: 200 }, 1500).notes)).toEqual(['props-close'])
    expect(codes(hoverOf({ motorRadiusMm: 0 }, 1500).notes)).toEqual([])
  })
})
