import { describe, expect, it } from 'vitest'
import type { MassDoubt } from '../../../src/core/frame/doubt.ts'
import { massDoubt } from '../../../src/core/frame/massDoubt.ts'
import { massOdds } from '../../../src/core/frame/odds.ts'
import { materialOf, printedPart, typedItem } from '../../support/ledgerParts.ts'
import { seededRandom } from '../../support/random.ts'

const DRAWS = 100_000

/**
 * Totals drawn one by one. Unlike the closed form it multiplies the errors, and draws every one from its own lopsided bell:
 * the side by its share of the width, then half a normal (Box and Muller 1958, doi 10.1214/aoms/1177706645).
 */
function drawTotals(doubt: MassDoubt, seed: number): Float64Array {
  const random = seededRandom(seed)
  const half = (): number =>
    Math.abs(Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random()))
  const draw = ({ low, high }: { low: number; high: number }): number => {
    if (low + high === 0) return 0
    return random() < low / (low + high) ? (-half() * low) / 2 : (half() * high) / 2
  }
  const totals = new Float64Array(DRAWS)
  for (let i = 0; i < DRAWS; i++) {
    const factors = new Map(doubt.shared.map(({ id, spread }) => [id, 1 + draw(spread)]))
    let total = 0
    for (const { massG, spread, sharedIds } of doubt.masses) {
      let mass = massG * (1 + draw(spread))
      for (const id of sharedIds) mass *= factors.get(id)!
      total += mass
    }
    totals[i] = total
  }
  return totals.sort()
}

const shareBelow = (sorted: Float64Array, thresholdG: number): number =>
  sorted.findIndex((total) => total >= thresholdG) / sorted.length

const even = (share: number) => ({ low: share, high: share })
const aMass = (id: string, massG: number, spread: { low: number; high: number }) => ({
  id,
  name: id,
  massG,
  spread,
  sharedIds: [],
  spreadWeighed: even(0.01),
})

const QUAD = massDoubt(
  [
    printedPart('arm', 15, 4),
    printedPart('deck', 60, 1),
    printedPart('cover', 5, 4, materialOf('petg')),
    printedPart('foot', 3, 4, materialOf('tpu-95a'), 0.08),
  ],
  {
    items: [
      typedItem('motor', 30, { quantity: 4, status: 'weighed' }),
      typedItem('pack', 155, { status: 'calculated' }),
      typedItem('camera', 60),
      typedItem('screws', 0.9, { quantity: 24, status: 'calculated', basis: 'published' }),
    ],
    weighedG: {},
  },
)

const CASES: Readonly<Record<string, MassDoubt>> = {
  'a whole quad': QUAD,
  'a frame of one spool': massDoubt([printedPart('arm', 15, 4), printedPart('deck', 60, 1)], {
    items: [],
    weighedG: {},
  }),
  'one lopsided part': { masses: [aMass('part', 100, { low: 0, high: 0.2 })], shared: [] },
  'a lopsided part among even ones': {
    masses: [
      aMass('part', 100, { low: 0.01, high: 0.3 }),
      aMass('pack', 150, even(0.05)),
      aMass('camera', 60, even(0.1)),
    ],
    shared: [],
  },
  'two parts that lean apart, one side three times the other': {
    masses: [
      aMass('a', 100, { low: 0.08, high: 0.24 }),
      aMass('b', 100, { low: 0.24, high: 0.08 }),
    ],
    shared: [],
  },
}

describe('massOdds against a Monte Carlo of 100 000 draws', () => {
  it.each(Object.entries(CASES))('agrees within one point for %s', (_, doubt) => {
    const totals = drawTotals(doubt, 250)
    for (const chance of [0.02, 0.05, 0.1, 0.25, 0.5, 0.75, 0.9, 0.95, 0.98]) {
      const thresholdG = totals[Math.round(chance * DRAWS)]!
      const odds = massOdds(doubt, thresholdG)
      expect(Math.abs(odds.chanceBelow - shareBelow(totals, thresholdG))).toBeLessThan(0.01)
    }
  })

  it('is off by up to 2.5 points for errors that are one-sided altogether and lean apart', () => {
    const doubt: MassDoubt = {
      masses: [aMass('a', 100, { low: 0, high: 0.2 }), aMass('b', 100, { low: 0.1, high: 0 })],
      shared: [],
    }
    const totals = drawTotals(doubt, 253)
    for (const chance of [0.02, 0.1, 0.3, 0.5, 0.7, 0.9, 0.98]) {
      const thresholdG = totals[Math.round(chance * DRAWS)]!
      expect(Math.abs(massOdds(doubt, thresholdG).chanceBelow - chance)).toBeLessThan(0.025)
    }
  })

  it('agrees on mean, spread and the range that holds 95 %', () => {
    const totals = drawTotals(QUAD, 251)
    const mean = totals.reduce((sum, total) => sum + total, 0) / DRAWS
    const variance = totals.reduce((sum, total) => sum + (total - mean) ** 2, 0) / DRAWS
    const odds = massOdds(QUAD, 500)
    expect(Math.abs(odds.meanG / mean - 1)).toBeLessThan(0.001)
    expect(Math.abs(odds.sigmaG / Math.sqrt(variance) - 1)).toBeLessThan(0.02)
    expect(Math.abs(odds.rangeG.low / totals[0.025 * DRAWS]! - 1)).toBeLessThan(0.003)
    expect(Math.abs(odds.rangeG.high / totals[0.975 * DRAWS]! - 1)).toBeLessThan(0.003)
  })

  it('would disagree if a spool’s error were taken as independent between parts', () => {
    const doubt = CASES['a frame of one spool']!
    const apart: MassDoubt = {
      masses: doubt.masses.map((mass) => ({ ...mass, sharedIds: [`own:${mass.id}`, 'printer'] })),
      shared: [
        ...doubt.masses.map(({ id }) => ({ ...doubt.shared[0]!, id: `own:${id}` })),
        doubt.shared[1]!,
      ],
    }
    const totals = drawTotals(doubt, 252)
    const thresholdG = totals[0.1 * DRAWS]!
    expect(Math.abs(massOdds(apart, thresholdG).chanceBelow - 0.1)).toBeGreaterThan(0.01)
  })
})

describe('massOdds', () => {
  const odds = massOdds(QUAD, 450)

  it('shares the doubt out by source, the largest first', () => {
    expect(odds.sources.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 9)
    const shares = odds.sources.map(({ share }) => share)
    expect(shares).toEqual([...shares].sort((a, b) => b - a))
    expect(odds.sources[0]?.name).toBe('Printer: packing and flow')
  })

  it('ranks measurements by what they take away', () => {
    const gains = odds.measurements.map(({ gain }) => gain)
    expect(gains).toEqual([...gains].sort((a, b) => b - a))
    expect(odds.measurements.map(({ text }) => text)).toContain('Weigh one “deck”')
    expect(odds.measurements.map(({ text }) => text)).toContain(
      'Type the density of your own spool of PLA',
    )
    // Weighed already, so nothing to gain.
    expect(odds.measurements.map(({ id }) => id)).not.toContain('motor')
  })

  it('foretells what weighing a part does to the doubt', () => {
    const parts = [printedPart('arm', 15, 4), printedPart('deck', 60, 1)]
    const before = massOdds(massDoubt(parts, { items: [], weighedG: {} }), 130)
    const after = massOdds(massDoubt(parts, { items: [], weighedG: { deck: 60 } }), 130)
    const foretold = before.measurements.find(({ id }) => id === 'deck')
    expect(foretold?.sigmaAfterG).toBeCloseTo(after.sigmaG, 9)
    expect(foretold?.gain).toBeCloseTo(1 - (after.sigmaG / before.sigmaG) ** 2, 9)
  })

  it('foretells what typing a spool’s density does', () => {
    const pla = materialOf('pla')
    const doubtOf = (material: typeof pla) =>
      massDoubt([printedPart('arm', 15, 4, material)], { items: [], weighedG: {} })
    const before = massOdds(doubtOf(pla), 60)
    const after = massOdds(doubtOf({ ...pla, densityTyped: true }), 60)
    const foretold = before.measurements.find(({ id }) => id === 'spool:pla')
    expect(foretold?.sigmaAfterG).toBeCloseTo(after.sigmaG, 9)
  })

  it('never says yes or no within 3 % of a line, however sure', () => {
    const sure: MassDoubt = { masses: [aMass('quad', 245, even(0.001))], shared: [] }
    const near = massOdds(sure, 250)
    expect(near.chanceBelow).toBeGreaterThan(0.999)
    expect(near.verdict).toBe('too close to say')
    expect(massOdds(sure, 238).verdict).toBe('too close to say')
    expect(massOdds(sure, 253).verdict).toBe('below')
    expect(massOdds(sure, 237).verdict).toBe('above')
  })

  it('does not say yes or no further off either while the doubt is large', () => {
    const vague: MassDoubt = { masses: [aMass('quad', 220, even(0.3))], shared: [] }
    const found = massOdds(vague, 250)
    expect(found.verdict).toBe('too close to say')
    expect(found.chanceBelow).toBeGreaterThan(0.7)
    expect(found.chanceBelow).toBeLessThan(0.95)
  })

  it('knows nothing to measure where nothing is in doubt', () => {
    const known: MassDoubt = { masses: [aMass('quad', 200, even(0))], shared: [] }
    expect(massOdds(known, 250)).toMatchObject({
      chanceBelow: 1,
      sigmaG: 0,
      sources: [],
      measurements: [],
      verdict: 'below',
    })
    expect(massOdds({ masses: [], shared: [] }, 250)).toMatchObject({ midG: 0, chanceBelow: 1 })
  })
})
