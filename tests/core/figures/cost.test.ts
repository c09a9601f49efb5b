import { describe, expect, it } from 'vitest'
import { MATERIALS } from '../../../src/core/data/materials.ts'
import { PRINTER_DEFAULT } from '../../../src/core/data/printers.ts'
import { costOf } from '../../../src/core/figures/cost.ts'
import type { Material, Prices } from '../../../src/core/model/figures.ts'

const PLAIN: Prices = {
  currency: 'EUR',
  electricityPerKwh: 0.28,
  wearPerHour: 0,
  wastePct: 0,
  failurePct: 0,
}
const PRINTER = { ...PRINTER_DEFAULT, powerW: 350 }
const SURE = { shared: [], own: 0 }
const SURE_BOTH = { spool: SURE, time: SURE }
const at = (pricePerKg: number): Material => {
  const pla = MATERIALS[0]!
  return { ...pla, pricePerKg: { ...pla.pricePerKg, value: pricePerKg } }
}

describe('costOf', () => {
  // D. G. Zisopol et al., Polymers 2023, 15(18), 3787, doi 10.3390/polym15183787, equations 2–5 and table 1:
  // 0.35 kW, 0.28 EUR/kWh, PLA 0.022 and ABS 0.021 EUR/g.
  it.each([
    ['PLA', 22, 46, 0.3083],
    ['ABS', 21, 60, 0.3206],
  ])('10.60 g of %s at %s EUR/kg in %s min cost %s EUR', (_, pricePerKg, minutes, published) => {
    const cost = costOf(10.6, minutes * 60, SURE_BOTH, at(pricePerKg), PRINTER, PLAIN)
    expect(Math.abs(cost.mid - published)).toBeLessThan(1e-4)
  })

  it('adds waste to filament, wear to hours, and pays failed prints with the good ones', () => {
    const prices: Prices = { ...PLAIN, wearPerHour: 0.1, wastePct: 10, failurePct: 20 }
    const cost = costOf(100, 7200, SURE_BOTH, at(20), PRINTER, prices)
    expect(cost.filament).toBeCloseTo(2.2, 10)
    expect(cost.electricity).toBeCloseTo(0.196, 10)
    expect(cost.wear).toBeCloseTo(0.2, 10)
    // 1/(1 − 0.2) prints for each good one: a quarter more.
    expect(cost.failures).toBeCloseTo((2.2 + 0.196 + 0.2) / 4, 10)
    expect(cost.mid).toBeCloseTo((2.2 + 0.196 + 0.2) * 1.25, 10)
  })

  it('is as unsure as its filament and its hours, each by its share of the money', () => {
    const doubt = {
      spool: { shared: [{ id: 'density', name: 'Density', effect: 0.05 }], own: 0 },
      time: { shared: [{ id: 'clock', name: 'Pace', effect: 0.1 }], own: 0 },
    }
    const cost = costOf(10, 3600, doubt, at(20), PRINTER, PLAIN)
    // 0.20 of filament ± 10 %, 0.098 of electricity ± 20 %: two errors that know nothing of each other.
    expect(cost.high - cost.mid).toBeCloseTo(Math.hypot(0.02, 0.0196), 10)
    expect(cost.mid - cost.low).toBeCloseTo(Math.hypot(0.02, 0.0196), 10)
  })

  it('stays finite when every print fails', () => {
    const cost = costOf(10, 60, SURE_BOTH, at(20), PRINTER, { ...PLAIN, failurePct: 100 })
    expect(Number.isFinite(cost.mid)).toBe(true)
  })
})
