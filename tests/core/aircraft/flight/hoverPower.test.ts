import { describe, expect, it } from 'vitest'
import { diskAreaM2, idealHoverPowerW } from '../../../../src/core/aircraft/flight/hoverPower.ts'
import { relative } from '../../../support/censusCase.ts'
import { hoverOf } from '../../../support/flight.ts'

/*
 * Measured electrical power of whole quadrotors held in hover: Russell et al., NASA/TM-2018-219758
 * (runs and points named); sizes: Russell, Jung, Willink, Glasner, AHS 72nd Annual Forum 2016. Read
 * through a secondary table that quotes the run numbers. Ideal power beside them worked out by hand
 * at 1.225 kg/m³ and 9.80665 m/s².
 */
const MEASURED = [
  { article: 'A, 28/11', kg: 1.51, diameterM: 0.254, electricalW: 184.44, idealW: 80.86 },
  { article: 'B, 27/9', kg: 1.223, diameterM: 0.2388, electricalW: 172.07, idealW: 62.69 },
  { article: 'C, 29/12', kg: 1.279, diameterM: 0.2438, electricalW: 142.9, idealW: 65.67 },
  { article: 'D, 119/11', kg: 2.913, diameterM: 0.381, electricalW: 281.52, idealW: 144.45 },
]

describe('hover power against NASA/TM-2018-219758', () => {
  const errors = MEASURED.map(({ kg, diameterM, electricalW }) => {
    const { hoverW } = hoverOf({ propDiameterMm: diameterM * 1000, avionicsW: 0 }, kg * 1000)
    return hoverW.mid / electricalW - 1
  })

  it.each(MEASURED)('ideal power of $article to 0.1 %', ({ kg, diameterM, idealW }) => {
    const diskM2 = diskAreaM2(4, diameterM * 1000)
    expect(relative(idealHoverPowerW(kg, diskM2), idealW)).toBeLessThan(1e-3)
  })

  it('estimates each of the four articles within 22 %, on average within 12 %', () => {
    const sizes = errors.map(Math.abs)
    expect(Math.max(...sizes)).toBeLessThan(0.22)
    expect(sizes.reduce((sum, size) => sum + size, 0) / sizes.length).toBeLessThanOrEqual(0.12)
  })

  it('puts each of the four measured powers inside its own range', () => {
    for (const { kg, diameterM, electricalW } of MEASURED) {
      const { hoverW } = hoverOf({ propDiameterMm: diameterM * 1000, avionicsW: 0 }, kg * 1000)
      expect(electricalW).toBeGreaterThan(hoverW.low)
      expect(electricalW).toBeLessThan(hoverW.high)
    }
  })
})

describe('hover endurance against makers’ published figures', () => {
  /*
   * enterprise.dji.com spec pages: matrice-30, matrice-4-series, mavic-3-m; windless, whole pack,
   * 15 W of electronics.
   */
  it.each([
    { kg: 3.77, diameterMm: 406.4, wh: 263.2, minutes: 36 },
    { kg: 1.219, diameterMm: 274.3, wh: 99.5, minutes: 42 },
    { kg: 0.951, diameterMm: 238.8, wh: 77, minutes: 37 },
  ])('$kg kg on $wh Wh hovers $minutes min within 16 %', ({ kg, diameterMm, wh, minutes }) => {
    const { hoverMin } = hoverOf(
      {
        propDiameterMm: diameterMm,
        packCells: 1,
        voltsPerCell: 3.7,
        packMah: (wh / 3.7) * 1000,
        usableShare: 1,
        avionicsW: 15,
      },
      kg * 1000,
    )
    expect(relative(hoverMin.mid, minutes)).toBeLessThan(0.16)
  })
})
