import { describe, expect, it } from 'vitest'
import type { SeasonSetup } from '../../../../src/core/model/aircraft.ts'
import { exactRange } from '../../../../src/core/model/ranges.ts'
import { playSeason } from '../../../../src/core/aircraft/season/playSeason.ts'

const SETUP: SeasonSetup = {
  flights: 60,
  crashesPerFlight: 0.1,
  breakShare: { arm: 0.5, foot: 0.3 },
  carbonLeadDays: 6,
  carbonPartPrice: 9,
}
const PARTS = [
  {
    partId: 'arm',
    name: 'Arm',
    spares: 2,
    printed: { cost: exactRange(0.8), timeS: exactRange(12_600) },
    carbonPrice: 9,
  },
  {
    partId: 'foot',
    name: 'Foot',
    spares: 0,
    printed: { cost: exactRange(0.1), timeS: exactRange(3600) },
    carbonPrice: null,
  },
  {
    partId: 'deck',
    name: 'Deck',
    spares: 0,
    printed: { cost: exactRange(2), timeS: exactRange(9000) },
    carbonPrice: 7,
  },
]
const FIRST = { printed: exactRange(10), carbon: exactRange(40) }

describe('the same season on both frames', () => {
  const { printed, carbon } = playSeason(SETUP, PARTS, FIRST)

  it('waits printer hours for a printed part and the lead time for a carbon one', () => {
    // Carbon: 3 arms at 9 and 6 days each; both: 1.8 feet at 0.1 and an hour.
    expect(carbon.cost.mid).toBeCloseTo(40 + 3 * 9 + 1.8 * 0.1, 9)
    expect(carbon.groundedDays.mid).toBeCloseTo(3 * 6 + 1.8 / 24, 9)
    expect(printed.groundedDays.mid).toBeLessThan(1)
    expect(printed.cost.mid).toBeLessThan(carbon.cost.mid)
  })

  it('leaves out parts that never break', () => {
    expect(printed.lines.map(({ partId }) => partId)).toEqual(['arm', 'foot'])
  })

  it('breaks tougher carbon less often where the builder says so', () => {
    const tough = playSeason({ ...SETUP, carbonBreakFactor: 0.2 }, PARTS, FIRST)
    expect(tough.printed).toEqual(printed)
    const arm = tough.carbon.lines.find(({ partId }) => partId === 'arm')
    expect(arm?.breaks).toBeCloseTo(0.6, 12)
    const foot = tough.carbon.lines.find(({ partId }) => partId === 'foot')
    expect(foot?.breaks).toBeCloseTo(1.8, 12)
  })
})
