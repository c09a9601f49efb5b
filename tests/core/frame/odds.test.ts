import { describe, expect, it } from 'vitest'
import type { DoubtLine } from '../../../src/core/doubt/lines.ts'
import { frameDoubt } from '../../../src/core/frame/frameDoubt.ts'
import type { DoubtedPart } from '../../../src/core/frame/frameDoubt.ts'
import { itemLine } from '../../../src/core/frame/itemLine.ts'
import { massOdds } from '../../../src/core/frame/odds.ts'
import type { Item } from '../../../src/core/model/aircraft.ts'
import { doubtedPart, onScale } from '../../support/doubtedParts.ts'
import { materialOf, typedItem } from '../../support/ledgerParts.ts'
import { seededNormal } from '../../support/random.ts'

const DRAWS = 100_000

interface Case {
  readonly parts: readonly DoubtedPart[]
  readonly items: readonly Item[]
}

/** Totals drawn one by one. Unlike the closed form this multiplies the errors, piece by piece. */
function drawTotals({ parts, items }: Case, seed: number): Float64Array {
  const normal = seededNormal(seed)
  const lines = [
    ...parts.map(({ id, name, quantity, figures }): DoubtLine => ({
      id,
      name,
      quantity,
      each: figures.massG.mid,
      doubt: figures.doubt.mass,
      scatter: 0.005,
    })),
    ...items.map(itemLine),
  ]
  const totals = new Float64Array(DRAWS)
  for (let i = 0; i < DRAWS; i++) {
    const hidden = new Map<string, number>()
    let total = 0
    for (const { each, quantity, doubt, scatter } of lines) {
      let design = each * (1 + doubt.own * normal())
      for (const { id, effect } of doubt.shared) {
        const drawn = hidden.get(id) ?? normal()
        hidden.set(id, drawn)
        design *= 1 + effect * drawn
      }
      for (let piece = 0; piece < quantity; piece++) total += design * (1 + scatter * normal())
    }
    totals[i] = total
  }
  return totals.sort()
}

const QUAD: Case = {
  parts: [
    doubtedPart('arm', 15, 4),
    doubtedPart('deck', 60, 1),
    doubtedPart('cover', 5, 4, materialOf('petg')),
    doubtedPart('foot', 3, 4, materialOf('tpu-95a'), { count: 0.08 }),
  ],
  items: [
    typedItem('motor', 30, { quantity: 4, status: 'weighed' }),
    typedItem('pack', 155, { status: 'calculated' }),
    typedItem('camera', 60),
    typedItem('screws', 0.9, { quantity: 24, status: 'calculated', basis: 'published' }),
  ],
}
const ONE_SPOOL: Case = {
  parts: [doubtedPart('arm', 15, 4), doubtedPart('deck', 60, 1)],
  items: [],
}
const doubtOf = ({ parts, items }: Case) => frameDoubt(parts, items)

describe('massOdds against a Monte Carlo of 100 000 draws', () => {
  it.each([
    ['a whole quad', QUAD],
    ['a frame of one spool', ONE_SPOOL],
  ])('agrees within one point for %s', (_, one) => {
    const totals = drawTotals(one, 250)
    for (const chance of [0.02, 0.05, 0.1, 0.25, 0.5, 0.75, 0.9, 0.95, 0.98]) {
      const thresholdG = totals[Math.round(chance * DRAWS)]!
      const odds = massOdds(doubtOf(one), thresholdG)
      expect(Math.abs(odds.chanceBelow - chance)).toBeLessThan(0.01)
    }
  })

  it('agrees on mean, spread and the range that holds 95 %', () => {
    const totals = drawTotals(QUAD, 251)
    const mean = totals.reduce((sum, total) => sum + total, 0) / DRAWS
    const variance = totals.reduce((sum, total) => sum + (total - mean) ** 2, 0) / DRAWS
    const odds = massOdds(doubtOf(QUAD), 500)
    expect(Math.abs(odds.meanG / mean - 1)).toBeLessThan(0.001)
    expect(Math.abs(odds.sigmaG / Math.sqrt(variance) - 1)).toBeLessThan(0.02)
    expect(Math.abs(odds.rangeG.low / totals[0.025 * DRAWS]! - 1)).toBeLessThan(0.003)
    expect(Math.abs(odds.rangeG.high / totals[0.975 * DRAWS]! - 1)).toBeLessThan(0.003)
  })

  it('would disagree if a spool’s error were taken as independent between parts', () => {
    const apart = ONE_SPOOL.parts.map((part) => {
      const { doubt } = part.figures
      const own = {
        ...doubt.mass,
        shared: doubt.mass.shared.map((e) => ({ ...e, id: part.id + e.id })),
      }
      return { ...part, figures: { ...part.figures, doubt: { ...doubt, mass: own } } }
    })
    const thresholdG = drawTotals(ONE_SPOOL, 252)[0.1 * DRAWS]!
    const odds = massOdds(doubtOf({ parts: apart, items: [] }), thresholdG)
    expect(Math.abs(odds.chanceBelow - 0.1)).toBeGreaterThan(0.03)
  })
})

describe('massOdds', () => {
  const odds = massOdds(doubtOf(QUAD), 450)

  it('shares the doubt out by source, the largest first', () => {
    expect(odds.sources.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 9)
    const shares = odds.sources.map(({ share }) => share)
    expect(shares).toEqual(shares.toSorted((a, b) => b - a))
    const names = odds.sources.map(({ name }) => name)
    expect(names).toContain('Density of PLA')
    expect(names).toContain('Packing of PLA')
    expect(names).toContain('camera')
  })

  it('ranks measurements by what they take away', () => {
    const gains = odds.measurements.map(({ gain }) => gain)
    expect(gains).toEqual(gains.toSorted((a, b) => b - a))
    const texts = odds.measurements.map(({ text }) => text)
    expect(texts).toContain('Weigh one “deck”')
    expect(texts).toContain('Type the density of your own spool of PLA')
    // Weighed already, so nothing to gain.
    expect(odds.measurements.map(({ id }) => id)).not.toContain('motor')
  })

  it('foretells what weighing a part does to the doubt, of its sisters too', () => {
    const before = massOdds(doubtOf(ONE_SPOOL), 130)
    const deck = doubtedPart('deck', 60, 1, materialOf('pla'), { weighed: onScale(60) })
    const after = massOdds(frameDoubt([ONE_SPOOL.parts[0]!, deck], []), 130)
    const foretold = before.measurements.find(({ id }) => id === 'deck')
    expect(foretold?.sigmaAfterG).toBeCloseTo(after.sigmaG, 9)
    expect(foretold?.gain).toBeCloseTo(1 - (after.sigmaG / before.sigmaG) ** 2, 9)
    // The arms alone were in doubt by more than half of it before.
    expect(after.sigmaG).toBeLessThan(before.sigmaG / 3)
  })

  it('foretells what typing a spool’s density does', () => {
    const pla = materialOf('pla')
    const of = (material: typeof pla) => frameDoubt([doubtedPart('arm', 15, 4, material)], [])
    const before = massOdds(of(pla), 60)
    const after = massOdds(of({ ...pla, densityTyped: true }), 60)
    const foretold = before.measurements.find(({ id }) => id === 'density:pla')
    expect(foretold?.sigmaAfterG).toBeCloseTo(after.sigmaG, 9)
  })

  /** One part of one piece that is off by this share, 19 times in 20, by itself. */
  const known = (massG: number, share: number) => {
    const part = doubtedPart('quad', massG, 1)
    const mass = { shared: [], own: share / 2 }
    const figures = { ...part.figures, doubt: { ...part.figures.doubt, mass } }
    return frameDoubt([{ ...part, figures }], [])
  }

  it('never says yes or no within 3 % of a line, however sure', () => {
    const near = massOdds(known(245, 0.001), 250)
    expect(near.chanceBelow).toBeGreaterThan(0.999)
    expect(near.verdict).toBe('too close to say')
    expect(massOdds(known(245, 0.001), 238).verdict).toBe('too close to say')
    expect(massOdds(known(245, 0.001), 253).verdict).toBe('below')
    expect(massOdds(known(245, 0.001), 237).verdict).toBe('above')
  })

  it('does not say yes or no further off either while the doubt is large', () => {
    const found = massOdds(known(220, 0.3), 250)
    expect(found.verdict).toBe('too close to say')
    expect(found.chanceBelow).toBeGreaterThan(0.7)
    expect(found.chanceBelow).toBeLessThan(0.95)
  })

  it('knows nothing to measure where nothing is in doubt', () => {
    expect(massOdds(frameDoubt([], []), 250)).toMatchObject({
      midG: 0,
      chanceBelow: 1,
      sigmaG: 0,
      sources: [],
      measurements: [],
      verdict: 'below',
    })
  })
})
