import { describe, expect, it } from 'vitest'
import { MATERIALS } from '../../../src/core/data/materials.ts'
import { POWER_UNTYPED } from '../../../src/core/doubt/costFactors.ts'
import { PRINTER_DEFAULT } from '../../../src/core/data/printers.ts'
import { powerOf } from '../../../src/core/figures/power.ts'
import type { Sourced } from '../../../src/core/model/figures.ts'
import { relative } from '../../support/censusCase.ts'

const celsius = (value: number): Sourced => ({ value, mark: 'user', source: 'test' })
const heat = (nozzle: number, bed: number) => ({ nozzleC: celsius(nozzle), bedC: celsius(bed) })

describe('the draw of a printer', () => {
  /*
   * Hopkins et al. 2021 as given on ammap.eu: steady draw 114 W at 210/60 °C, 147 W at 240/80, 176
   * W at 240/100, worked out from 7e-6 MJ a minute and °C of nozzle and 89e-6 of bed.
   */
  it.each([
    [210, 60, 113.5],
    [240, 80, 146.7],
    [240, 100, 176.3],
  ])('stated as 113.5 W in PLA is at %i and %i °C %f W', (nozzle, bed, watts) => {
    expect(relative(powerOf({ powerW: 113.5 }, heat(nozzle, bed)), watts)).toBeLessThan(1e-3)
  })

  it('in PLA lies between the measured 95 and 190 W (the same; 189.5 W 3dprintscape.com)', () => {
    const pla = MATERIALS.find(({ id }) => id === 'pla')!
    const watts = powerOf(PRINTER_DEFAULT, pla)
    expect(watts).toBeCloseTo(PRINTER_DEFAULT.powerW, 9)
    expect(watts * (1 - POWER_UNTYPED)).toBeGreaterThan(95)
    expect(watts * (1 + POWER_UNTYPED)).toBeGreaterThan(189.5)
    expect(watts).toBeLessThan(190)
  })

  it('rises with the bed, which is most of it', () => {
    const at = (bed: number) => powerOf({ powerW: 150 }, heat(230, bed))
    for (let bed = 20; bed < 120; bed += 10) expect(at(bed + 10)).toBeGreaterThan(at(bed))
    expect(at(0)).toBeLessThan(0.5 * at(60))
  })
})

describe('temperatures of the built-in plastics', () => {
  it.each(MATERIALS)('of $name are printable and marked', ({ nozzleC, bedC }) => {
    expect(nozzleC.value).toBeGreaterThanOrEqual(190)
    expect(nozzleC.value).toBeLessThanOrEqual(300)
    expect(bedC.value).toBeGreaterThanOrEqual(20)
    expect(bedC.value).toBeLessThanOrEqual(120)
    for (const { mark, source } of [nozzleC, bedC]) expect(`${mark}: ${source}`).toMatch(/\S+: \S/)
  })
})
