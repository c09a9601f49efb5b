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
  failurePctPerHour: 0,
}
const PRINTER = { ...PRINTER_DEFAULT, powerW: 350 }
const SURE = { shared: [], own: 0 }
const SURE_BOTH = { spool: SURE, time: SURE }
const at = (pricePerKg: number): Material => {
  const pla = MATERIALS[0]!
  return { ...pla, pricePerKg: { value: pricePerKg, mark: 'user', source: 'as published' } }
}

describe('costOf', () => {
  // D. G. Zisopol et al., Polymers 2023, 15(18), 3787, doi 10.3390/polym15183787, equations 2–5 and
  // table 1: 0.35 kW, 0.28 EUR/kWh, PLA 0.022 and ABS 0.021 EUR/g.
  it.each([
    ['PLA', 22, 46, 0.3083],
    ['ABS', 21, 60, 0.3206],
  ])('10.60 g of %s at %s EUR/kg in %s min cost %s EUR', (_, pricePerKg, minutes, published) => {
    const cost = costOf(10.6, minutes * 60, SURE_BOTH, at(pricePerKg), PRINTER, PLAIN)
    expect(Math.abs(cost.mid - published)).toBeLessThan(1e-4)
  })

  it('adds waste to filament, wear to hours, and pays failed prints with the good ones', () => {
    const prices: Prices = { ...PLAIN, wearPerHour: 0.1, wastePct: 10, failurePctPerHour: 20 }
    const cost = costOf(100, 7200, SURE_BOTH, at(20), PRINTER, prices)
    expect(cost.filament).toBeCloseTo(2.2, 10)
    expect(cost.electricity).toBeCloseTo(0.196, 10)
    expect(cost.wear).toBeCloseTo(0.2, 10)
    // Two hours at 20 % an hour: 0.8² go well, so 1/0.64 prints for each good one.
    expect(cost.failures).toBeCloseTo((2.2 + 0.196 + 0.2) * (1 / 0.64 - 1), 10)
    expect(cost.mid).toBeCloseTo((2.2 + 0.196 + 0.2) / 0.64, 10)
  })

  it('lets a print of nine minutes fail less than one of two hours: 0.3 and 4.0 % at 2 % an hour', () => {
    const prices: Prices = { ...PLAIN, failurePctPerHour: 2 }
    const failed = (minutes: number) => {
      const { mid, failures } = costOf(10, minutes * 60, SURE_BOTH, at(20), PRINTER, prices)
      return failures / mid
    }
    // 1 − 0.98^0.15 and 1 − 0.98²; as a share of all prints paid.
    expect(failed(9)).toBeCloseTo(0.003026, 6)
    expect(failed(120)).toBeCloseTo(0.0396, 10)
    // Printed one after the other it is the same as in one go.
    expect((1 - failed(60)) ** 2).toBeCloseTo(1 - failed(120), 12)
  })

  it('carries what the hours alone are off by once, whatever is paid by the hour', () => {
    const time = { shared: [], own: 0.2 }
    const prices: Prices = { ...PLAIN, wearPerHour: 0.1 }
    const free = costOf(0, 7200, { spool: SURE, time }, at(20), PRINTER, prices)
    // All of it goes with the hours: 20 % longer is 20 % dearer, in both.
    expect(free.electricity / free.mid).toBeCloseTo(0.196 / 0.396, 10)
    expect(free.doubt.own).toBeCloseTo(0.2, 12)
  })

  it('is unsure by price, draw and failures too, each to its part of the money', () => {
    const prices: Prices = { ...PLAIN, failurePctPerHour: 2 }
    const guessed = { ...at(20), pricePerKg: MATERIALS[0]!.pricePerKg }
    const usual = { ...prices, electricityPerKwh: 0.3 }
    const { mid, doubt } = costOf(10, 3600, SURE_BOTH, guessed, PRINTER_DEFAULT, usual)
    const effects = new Map(doubt.shared.map(({ id, effect }) => [id, effect]))
    expect(mid).toBeCloseTo((0.2 + 0.045) / 0.98, 10)
    // Of 0.245: 0.2 of filament ± 30 %, 0.045 of electricity ± 27 % of draw and ± 33 % of its
    // price, as two deviations.
    expect(effects.get('price:pla')).toBeCloseTo((0.15 * 0.2) / 0.245, 10)
    expect(effects.get(`power:${PRINTER.id}`)).toBeCloseTo((0.135 * 0.045) / 0.245, 10)
    expect(effects.get('electricity')).toBeCloseTo((0.165 * 0.045) / 0.245, 10)
    // Cost goes with exp(λ t), λ t = −ln 0.98; half to twice the rate is ±ln 2 of λ.
    expect(effects.get('failures')).toBeCloseTo((-Math.log(0.98) * Math.log(2)) / 2, 10)
  })

  it('is surer of what was typed: draw, price of electricity, failures', () => {
    const effectsOf = (printer: typeof PRINTER, prices: Prices) => {
      const { doubt } = costOf(10, 3600, SURE_BOTH, at(20), printer, prices)
      return new Map(doubt.shared.map(({ id, effect }) => [id, effect]))
    }
    const own: Prices = { ...PLAIN, failurePctPerHour: 3 }
    const effects = effectsOf(PRINTER, own)
    // 0.35 kW at 0.28 EUR: ± 5 % of the draw; its price counts as given.
    expect(effects.get(`power:${PRINTER.id}`)).toBeCloseTo((0.025 * 0.098) / 0.298, 10)
    expect(effects.has('electricity')).toBe(false)
    // Twenty failures counted: ± 2/√20.
    const failures = (-Math.log(0.97) * Math.log(1 + 2 / Math.sqrt(20))) / 2
    expect(effects.get('failures')).toBeCloseTo(failures, 10)
    const unknown = effectsOf(PRINTER, { ...own, currency: 'XYZ', electricityPerKwh: 0.3 })
    expect(unknown.has('electricity')).toBe(false)
  })

  it('is as unsure as its filament and its hours, each by its share of the money', () => {
    const doubt = {
      spool: { shared: [{ id: 'density', name: 'Density', effect: 0.05 }], own: 0 },
      time: { shared: [{ id: 'clock', name: 'Pace', effect: 0.1 }], own: 0 },
    }
    const cost = costOf(10, 3600, doubt, at(20), PRINTER, PLAIN)
    // 0.20 of filament ± 10 %, 0.098 of electricity ± 20 % of hours and ± 5 % of a typed draw:
    // errors that know nothing of each other.
    const wide = Math.hypot(0.02, 0.0196, 0.0049)
    expect(cost.high - cost.mid).toBeCloseTo(wide, 10)
    expect(cost.mid - cost.low).toBeCloseTo(wide, 10)
  })

  it('stays finite when every print fails', () => {
    const cost = costOf(10, 60, SURE_BOTH, at(20), PRINTER, { ...PLAIN, failurePctPerHour: 100 })
    expect(Number.isFinite(cost.mid)).toBe(true)
  })
})
