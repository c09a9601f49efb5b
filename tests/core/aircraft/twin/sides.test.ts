import { describe, expect, it } from 'vitest'
import { PLATES } from '../../../../src/core/data/plates.ts'
import { flatTwin } from '../../../../src/core/aircraft/twin/flatTwin.ts'
import { frameSides } from '../../../../src/core/aircraft/twin/sides.ts'
import { weighFrame } from '../../../../src/core/frame/weighFrame.ts'
import { hoverOf, QUAD } from '../../../support/flight.ts'
import { bareFrame, printedPart, typedItem } from '../../../support/ledgerParts.ts'

const twin = flatTwin(
  {
    partId: 'deck',
    outline: { areaMm2: 7000, cutLengthMm: 800, sheetMm: [100, 80] },
    bendingNm: 10,
  },
  PLATES.carbon,
  { thicknessMm: { deck: 2 }, platePricePerDm2: 4, cutPricePerM: 3 },
)
const parts = [printedPart('deck', 28, 2), printedPart('foot', 2, 3)]
const REST = [typedItem('rest', 460)]
const sum = weighFrame(parts, bareFrame({ items: REST }))
const sides = frameSides({
  sum,
  cut: new Map([['deck', twin]]),
  bought: { massG: 120, price: 35 },
  deliveryDays: 6,
  flight: QUAD,
})

describe('printed, cut and bought frames side by side', () => {
  it('sum grams, money and hours of the pieces that fly', () => {
    expect(sides.printed.massG.mid).toBeCloseTo(62, 9)
    expect(sides.printed.massG).toEqual(sum.printed.massG)
    expect(sides.printed.cost.mid).toBeCloseTo(62 / 50, 9)
    expect(sides.printed.printS.mid).toBeCloseTo(62 * 240, 6)
    expect(sides.printed.waitDays).toBe(0)
  })

  it('keep printed what has no twin', () => {
    expect(sides.cut?.massG.mid).toBeCloseTo(2 * 7 * 2 * 1.55 + 6, 9)
    expect(sides.cut?.cost.mid).toBeCloseTo(2 * 5.6 + 6 / 50, 9)
    expect(sides.cut?.printS.mid).toBeCloseTo(6 * 240, 6)
    expect(sides.cut?.waitDays).toBe(6)
  })

  it('hover with everything that flies', () => {
    expect(sides.printed.auwG.mid).toBeCloseTo(522, 9)
    expect(sides.bought?.auwG.mid).toBe(580)
    expect(sides.bought?.hover?.hoverMin.mid).toBeCloseTo(hoverOf({}, 580).hoverMin.mid, 9)
  })

  it('leave out what there is nothing for', () => {
    const bare = frameSides({
      sum: weighFrame(parts.slice(1), bareFrame()),
      cut: new Map(),
      bought: null,
      deliveryDays: 6,
      flight: null,
    })
    expect(bare.cut).toBeNull()
    expect(bare.bought).toBeNull()
    expect(bare.printed.hover).toBeNull()
  })
})
