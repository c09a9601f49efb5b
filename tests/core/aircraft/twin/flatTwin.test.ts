import { describe, expect, it } from 'vitest'
import type { TwinSetup } from '../../../../src/core/model/aircraft.ts'
import { PLATES } from '../../../../src/core/data/plates.ts'
import { plateBendingNm } from '../../../../src/core/aircraft/twin/bending.ts'
import type { FlatPart } from '../../../../src/core/aircraft/twin/flatTwin.ts'
import { flatTwin } from '../../../../src/core/aircraft/twin/flatTwin.ts'

const SETUP: Pick<TwinSetup, 'thicknessMm' | 'platePricePerDm2' | 'cutPricePerM'> = {
  thicknessMm: {},
  platePricePerDm2: 4,
  cutPricePerM: 3,
}

/** A solid printed deck 4 mm thick of 2 GPa plastic. */
const DECK: FlatPart = {
  partId: 'deck',
  outline: { areaMm2: 7000, cutLengthMm: 800, sheetMm: [100, 80] },
  bendingNm: plateBendingNm(2, 4),
}

describe('carbon twin of a flat part', () => {
  const twin = flatTwin(DECK, PLATES.carbon, SETUP)

  it('is as stiff at the cube root of the ratio of moduli: 4 mm of 2 GPa is 1.368 mm of 50 GPa', () => {
    expect(twin.equalMm.mid).toBeCloseTo(4 * Math.cbrt(2 / 50), 9)
    expect(twin.equal.stiffness.mid).toBeCloseTo(1, 9)
    expect(twin.equalMm.low).toBeCloseTo(4 * Math.cbrt((0.7 * 2) / 55), 9)
    expect(twin.equalMm.high).toBeCloseTo(4 * Math.cbrt((1.3 * 2) / 45), 9)
  })

  it('takes the thinnest stocked plate that is at least as stiff and shows the next thinner', () => {
    expect(twin.chosen.thicknessMm).toBe(1.5)
    expect(twin.above?.thicknessMm).toBe(1.5)
    expect(twin.below?.thicknessMm).toBe(1)
    expect(twin.typed).toBe(false)
    expect(twin.chosen.stiffness.mid).toBeCloseTo((1.5 / twin.equalMm.mid) ** 3, 9)
  })

  it('weighs area × thickness × density', () => {
    expect(twin.chosen.massG.mid).toBeCloseTo(7 * 1.5 * 1.55, 9)
    expect(twin.chosen.massG.low).toBeCloseTo(7 * 1.5 * 1.5, 9)
    expect(twin.chosen.massG.high).toBeCloseTo(7 * 1.5 * 1.6, 9)
  })

  it('is paid by its rectangle and by the length of its cuts', () => {
    expect(twin.plateCost).toBeCloseTo(0.8 * 4, 12)
    expect(twin.cutCost).toBeCloseTo(0.8 * 3, 12)
    expect(twin.cost).toBeCloseTo(5.6, 12)
    expect(twin.offcutMm2).toBe(1000)
    expect(twin.offcutShare).toBe(0.125)
  })

  it('takes a typed thickness, stocked or not', () => {
    const typed = flatTwin(DECK, PLATES.carbon, { ...SETUP, thicknessMm: { deck: 2.2, other: 9 } })
    expect(typed.chosen.thicknessMm).toBe(2.2)
    expect(typed.typed).toBe(true)
    expect(flatTwin(DECK, PLATES.carbon, { ...SETUP, thicknessMm: { deck: 0 } }).typed).toBe(false)
  })

  it('past the thickest stocked plate takes that one', () => {
    const tall = { ...DECK, bendingNm: plateBendingNm(3, 40) }
    const thick = flatTwin(tall, PLATES.carbon, SETUP)
    expect(thick.above).toBeNull()
    expect(thick.chosen.thicknessMm).toBe(10)
    expect(thick.chosen.stiffness.mid).toBeLessThan(1)
  })

  it('of softer plate is thicker', () => {
    const mm = (['aluminium', 'carbon', 'g10', 'plywood'] as const).map(
      (id) => flatTwin(DECK, PLATES[id], SETUP).equalMm.mid,
    )
    expect(mm).toEqual(mm.toSorted((a, b) => a - b))
  })
})
