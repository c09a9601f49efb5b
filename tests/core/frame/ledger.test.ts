import { describe, expect, it } from 'vitest'
import { GROWTH_DEFAULTS } from '../../../src/core/data/growth.ts'
import { aircraftLedger } from '../../../src/core/frame/ledger.ts'
import { weighFrame } from '../../../src/core/frame/weighFrame.ts'
import type { FramePart } from '../../../src/core/frame/types.ts'
import { bareFrame, printedPart, typedItem } from '../../support/ledgerParts.ts'

const rowsOf = (parts: readonly FramePart[]) => weighFrame(parts, bareFrame()).rows
const BARE = { items: [], growth: GROWTH_DEFAULTS, limitG: null }

describe('aircraftLedger', () => {
  it('adds a published build to the gram', () => {
    // A builder's table of a 5-inch quad, total 594.7 g: eerob.blogspot.com, August 2015.
    const table = {
      frame: 165,
      motors: 76,
      battery: 155,
      video: 18,
      'speed controllers': 12.6,
      receiver: 9.8,
      controller: 5.7,
      camera: 33,
      props: 19.6,
      extras: 100,
    }
    const items = Object.entries(table).map(([id, massG]) => typedItem(id, massG))
    expect(aircraftLedger([], { ...BARE, items }).basicMassG).toBeCloseTo(594.7, 9)
  })

  const parts = rowsOf([printedPart('arm', 15, 4), printedPart('deck', 60, 1)])
  // Weighed as calculated, so that the arm's weighing tells nothing new of the deck.
  const weighed = rowsOf([printedPart('arm', 16, 4, { scaleG: 16 }), printedPart('deck', 60, 1)])
  const items = [
    typedItem('screw', 0.9, {
      group: 'fasteners',
      quantity: 16,
      costEach: 0.05,
      status: 'calculated',
      basis: 'published',
    }),
    typedItem('motor', 30, {
      group: 'drive',
      quantity: 4,
      costEach: 15,
      status: 'weighed',
    }),
    typedItem('glue', 5),
  ]
  const ledger = aircraftLedger(weighed, { ...BARE, items, limitG: 320 })

  it('makes a line of every part and item', () => {
    expect(ledger.lines.map(({ id, group, status, basis }) => [id, group, status, basis])).toEqual([
      ['arm', 'printed', 'weighed', 'weighed'],
      ['deck', 'printed', 'calculated', 'computed'],
      ['screw', 'fasteners', 'calculated', 'published'],
      ['motor', 'drive', 'weighed', 'typed'],
      ['glue', 'other', 'estimated', 'typed'],
    ])
  })

  it('lets the scale overrule the calculation, for every piece of the part', () => {
    expect(ledger.lines[0]).toMatchObject({ massG: 16, massTotalG: 64, quantity: 4 })
  })

  it('sums lines into basic mass, growth by status, predicted mass and margin', () => {
    const basicG = 64 + 60 + 16 * 0.9 + 120 + 5
    const growthG = (64 + 120) * 0.005 + (60 + 16 * 0.9) * 0.05 + 5 * 0.1
    expect(ledger.basicMassG).toBeCloseTo(basicG, 9)
    expect(ledger.growthG).toBeCloseTo(growthG, 9)
    expect(ledger.predictedMassG).toBeCloseTo(basicG + growthG, 9)
    expect(ledger.marginG).toBeCloseTo(320 - basicG - growthG, 9)
    expect(ledger.cost).toBeCloseTo(4 * 0.32 + 1.2 + 16 * 0.05 + 60, 9)
  })

  it('shares the mass out by group, the heaviest first', () => {
    expect(ledger.groups.map(({ group }) => group)).toEqual([
      'printed',
      'drive',
      'fasteners',
      'other',
    ])
    expect(ledger.groups.reduce((sum, { massShare }) => sum + massShare, 0)).toBeCloseTo(1, 9)
    expect(ledger.groups[0]?.massG).toBeCloseTo(124, 9)
  })

  it('uses the builder’s own allowances', () => {
    const growth = { estimatedPct: 0, calculatedPct: 20, weighedPct: 0 }
    const own = aircraftLedger(parts, { ...BARE, growth })
    expect(own.growthG).toBeCloseTo(0.2 * 120, 9)
    expect(own.marginG).toBeNull()
  })

  it('goes below zero in the margin when the aircraft is over', () => {
    expect(aircraftLedger(parts, { ...BARE, limitG: 100 }).marginG).toBeLessThan(0)
  })

  it('is empty without parts and items', () => {
    expect(aircraftLedger([], BARE)).toMatchObject({ basicMassG: 0, growthG: 0, groups: [] })
  })
})
