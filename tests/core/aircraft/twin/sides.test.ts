import { describe, expect, it } from 'vitest'
import { PLATES } from '../../../../src/core/data/plates.ts'
import { exactRange } from '../../../../src/core/model/ranges.ts'
import { flatTwin } from '../../../../src/core/aircraft/twin/flatTwin.ts'
import { frameSides } from '../../../../src/core/aircraft/twin/sides.ts'
import { hoverOf, QUAD } from '../../../support/flight.ts'

const figures = (massG: number, cost: number, timeS: number) => ({
  massG: { low: massG * 0.9, mid: massG, high: massG * 1.1 },
  cost: { ...exactRange(cost), filament: cost, electricity: 0, wear: 0, failures: 0 },
  timeS: exactRange(timeS),
})
const twin = flatTwin(
  {
    partId: 'deck',
    outline: { areaMm2: 7000, cutLengthMm: 800, sheetMm: [100, 80] },
    bendingNm: 10,
  },
  PLATES.carbon,
  { thicknessMm: { deck: 2 }, platePricePerDm2: 4, cutPricePerM: 3 },
)
const lines = [
  { quantity: 2, printed: figures(28, 0.8, 7200), twin },
  { quantity: 3, printed: figures(2, 0.1, 600), twin: null },
]
const sides = frameSides({
  lines,
  bought: { massG: 120, price: 35 },
  restG: 460,
  deliveryDays: 6,
  flight: QUAD,
})

describe('printed, cut and bought frames side by side', () => {
  it('sum grams, money and hours of the pieces that fly', () => {
    expect(sides.printed.massG.mid).toBeCloseTo(62, 9)
    expect(sides.printed.massG.low).toBeCloseTo(55.8, 9)
    expect(sides.printed.cost.mid).toBeCloseTo(1.9, 9)
    expect(sides.printed.printS.mid).toBe(16_200)
    expect(sides.printed.waitDays).toBe(0)
  })

  it('keep printed what has no twin', () => {
    expect(sides.cut?.massG.mid).toBeCloseTo(2 * 7 * 2 * 1.55 + 6, 9)
    expect(sides.cut?.cost.mid).toBeCloseTo(2 * 5.6 + 0.3, 9)
    expect(sides.cut?.printS.mid).toBe(1800)
    expect(sides.cut?.waitDays).toBe(6)
  })

  it('hover with everything that flies', () => {
    expect(sides.printed.auwG.mid).toBeCloseTo(522, 9)
    expect(sides.bought?.auwG.mid).toBe(580)
    expect(sides.bought?.hover?.hoverMin.mid).toBeCloseTo(hoverOf({}, 580).hoverMin.mid, 9)
  })

  it('leave out what there is nothing for', () => {
    const bare = frameSides({
      lines: lines.slice(1),
      bought: null,
      restG: 0,
      deliveryDays: 6,
      flight: null,
    })
    expect(bare.cut).toBeNull()
    expect(bare.bought).toBeNull()
    expect(bare.printed.hover).toBeNull()
  })
})
