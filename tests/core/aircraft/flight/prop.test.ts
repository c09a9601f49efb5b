import { describe, expect, it } from 'vitest'
import { AIR_DENSITY } from '../../../../src/core/aircraft/flight/air.ts'
import { idealPowerW } from '../../../../src/core/aircraft/flight/hoverPower.ts'
import {
  figureOfMerit,
  propPowerW,
  propThrustN,
} from '../../../../src/core/aircraft/flight/prop.ts'
import { relative } from '../../../support/censusCase.ts'

/*
 * Static rows of Brandt and Selig, "Propeller Performance Data at Low Reynolds Numbers", AIAA 2011-1255, UIUC Propeller
 * Data Site vol. 1 (10x4.7, 11x4.7) and vol. 2 (the 9 in research propeller): rpm, CT, CP.
 * Thrust, power and figure of merit beside them were worked out by hand from the definitions at 1.225 kg/m³.
 */
const TEN_INCH = [
  [2377, 0.1059, 0.0431],
  [2676, 0.1079, 0.0437],
  [2947, 0.1079, 0.0437],
  [3234, 0.1104, 0.0444],
  [3494, 0.1117, 0.045],
  [3762, 0.1143, 0.046],
  [4029, 0.1158, 0.0466],
  [4319, 0.1177, 0.0474],
  [4590, 0.12, 0.0484],
  [4880, 0.1223, 0.0494],
  [5147, 0.1237, 0.05],
  [5417, 0.1252, 0.0508],
  [5715, 0.1263, 0.0513],
  [5960, 0.1278, 0.052],
  [6226, 0.1286, 0.0524],
  [6528, 0.1299, 0.0531],
] as const

const WORKED = [
  { inch: 10, rpm: 2377, ct: 0.1059, cp: 0.0431, thrustN: 0.8475, powerW: 3.471, merit: 0.638 },
  { inch: 10, rpm: 4590, ct: 0.12, cp: 0.0484, thrustN: 3.5808, powerW: 28.06, merit: 0.685 },
  { inch: 10, rpm: 6528, ct: 0.1299, cp: 0.0531, thrustN: 7.8404, powerW: 88.57, merit: 0.703 },
  { inch: 11, rpm: 3994, ct: 0.1128, cp: 0.0432, thrustN: 3.7313, powerW: 26.58, merit: 0.7 },
  { inch: 11, rpm: 6021, ct: 0.1259, cp: 0.0493, thrustN: 9.4646, powerW: 103.9, merit: 0.723 },
  {
    inch: 9,
    rpm: 5943.333,
    ct: 0.14045,
    cp: 0.080081,
    thrustN: 4.6102,
    powerW: 59.52,
    merit: 0.524,
  },
]

describe('propeller coefficients, UIUC static rows (AIAA 2011-1255)', () => {
  it.each(WORKED)('give thrust and power of the $inch in row at $rpm rpm to 0.1 %', (row) => {
    const diameterM = row.inch * 0.0254
    expect(
      relative(propThrustN(row.ct, AIR_DENSITY, row.rpm, diameterM), row.thrustN),
    ).toBeLessThan(1e-3)
    expect(relative(propPowerW(row.cp, AIR_DENSITY, row.rpm, diameterM), row.powerW)).toBeLessThan(
      1e-3,
    )
    expect(figureOfMerit(row.ct, row.cp)).toBeCloseTo(row.merit, 3)
  })

  it('give the same figure of merit as ideal over shaft power, to 1e-6', () => {
    for (const [rpm, ct, cp] of TEN_INCH) {
      const diskM2 = (Math.PI * 0.254 ** 2) / 4
      const ideal = idealPowerW(propThrustN(ct, AIR_DENSITY, rpm, 0.254), diskM2)
      const merit = ideal / propPowerW(cp, AIR_DENSITY, rpm, 0.254)
      expect(Math.abs(merit - figureOfMerit(ct, cp))).toBeLessThan(1e-6)
    }
  })

  it('average over the 10x4.7 sweep as the source states: CT 0.1185, CP 0.0480', () => {
    const mean = (column: 1 | 2) =>
      TEN_INCH.reduce((sum, row) => sum + row[column], 0) / TEN_INCH.length
    expect(Math.abs(mean(1) - 0.1185)).toBeLessThan(1e-4)
    expect(Math.abs(mean(2) - 0.048)).toBeLessThan(1e-4)
  })

  it.each([
    { prop: '5x3.75 three blades', ct: 0.1483, cp: 0.1032, merit: 0.442 },
    { prop: '5 in 15° three blades', ct: 0.1085, cp: 0.0622, merit: 0.458 },
    { prop: '5x4 three blades', ct: 0.1799, cp: 0.1174, merit: 0.519 },
  ])('of $prop on average give a figure of merit of $merit', ({ ct, cp, merit }) => {
    expect(figureOfMerit(ct, cp)).toBeCloseTo(merit, 3)
  })

  it('meet a lift constant of 5.7e-8 N/rpm²: 3.5 N at 7836 rpm (Klose and Wang, TU Munich)', () => {
    const diameterM = 0.2032
    const ct = (5.7e-8 * 3600) / (AIR_DENSITY * diameterM ** 4)
    expect(propThrustN(ct, AIR_DENSITY, 7836, diameterM)).toBeCloseTo(3.5, 3)
  })
})
