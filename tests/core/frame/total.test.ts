import { describe, expect, it } from 'vitest'
import { frameTotals } from '../../../src/core/frame/total.ts'
import type { PartFigures, Range } from '../../../src/core/model/figures.ts'
import { NO_DOUBT } from '../../support/ledgerParts.ts'

const about = (mid: number): Range => ({ low: mid * 0.9, mid, high: mid * 1.1 })

function figures(massG: number, hours: number, money: number): PartFigures {
  return {
    depositMm3: massG * 800,
    wallMm3: massG * 800,
    gapMm3: 0,
    skinMm3: 0,
    strandMm3: 0,
    infillMm3: 0,
    turnShare: 0,
    supportMm3: 0,
    brimMm3: 0,
    solidShare: 1,
    massG: about(massG),
    spoolG: about(massG + 1),
    filamentM: about(massG / 3),
    cost: {
      ...about(money),
      filament: money / 2,
      electricity: money / 4,
      wear: money / 4,
      failures: 0,
    },
    timeS: about(hours * 3600),
    doubt: NO_DOUBT,
  }
}

const ROWS = [
  { id: 'arm', quantity: 4, spares: 2, figures: figures(8, 0.5, 0.2) },
  { id: 'deck', quantity: 1, spares: 0, figures: figures(28, 2, 0.8) },
]

describe('frameTotals', () => {
  const totals = frameTotals(ROWS, null)

  it('weighs what flies and prints what is paid for', () => {
    expect(totals.massG.mid).toBeCloseTo(4 * 8 + 28, 10)
    expect(totals.timeS.mid).toBeCloseTo((6 * 0.5 + 2) * 3600, 8)
    expect(totals.cost.mid).toBeCloseTo(6 * 0.2 + 0.8, 10)
    expect(totals.cost.filament).toBeCloseTo((6 * 0.2 + 0.8) / 2, 10)
    expect(totals.flyingCost.mid).toBeCloseTo(4 * 0.2 + 0.8, 10)
    expect(totals.spoolG.mid).toBeCloseTo(6 * 9 + 29, 10)
    expect(totals.filamentM.mid).toBeCloseTo((6 * 8 + 28) / 3, 10)
  })

  it('adds ranges end to end: the spool that is dense is dense for every part', () => {
    expect(totals.massG.low).toBeCloseTo(60 * 0.9, 10)
    expect(totals.massG.high).toBeCloseTo(60 * 1.1, 10)
  })

  it('splits into shares that sum to one', () => {
    for (const key of ['massShare', 'costShare', 'timeShare'] as const) {
      expect(totals.rows.reduce((sum, row) => sum + row[key], 0)).toBeCloseTo(1, 10)
    }
    expect(totals.rows[0]!.massShare).toBeCloseTo(32 / 60, 10)
    expect(totals.rows[0]!.timeShare).toBeCloseTo(3 / 5, 10)
    expect(totals.rows[0]!.massG.high).toBeCloseTo(32 * 1.1, 10)
  })

  it('of no rows, or of rows with no pieces, is zero without dividing by it', () => {
    expect(frameTotals([], null).massG).toEqual({ low: 0, mid: 0, high: 0 })
    const idle = frameTotals([{ ...ROWS[0]!, quantity: 0, spares: 0 }], { massG: 0, price: 0 })
    expect(idle.rows[0]!.massShare).toBe(0)
    expect(idle.carbon?.massShare).toBeNull()
  })

  // Common practice, no source: 178 g printed against 122 g of carbon is 56 g and 46 % more.
  it('sets a printed frame of 178 g against a carbon one of 122 g: 56 g, 46 %', () => {
    const frame = [{ id: 'frame', quantity: 1, spares: 1, figures: figures(178, 11, 2.6) }]
    const { carbon } = frameTotals(frame, { massG: 122, price: 30 })
    expect(carbon!.massG.mid).toBeCloseTo(56, 10)
    expect(Math.round(100 * carbon!.massShare!.mid)).toBe(46)
    expect(carbon!.massG.low).toBeCloseTo(178 * 0.9 - 122, 10)
    // Like for like: the spare is not set against the bought frame.
    expect(carbon!.cost.mid).toBeCloseTo(2.6 - 30, 10)
  })
})
