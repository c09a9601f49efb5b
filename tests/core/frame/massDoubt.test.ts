import { describe, expect, it } from 'vitest'
import { massDoubt } from '../../../src/core/frame/massDoubt.ts'
import { massOdds } from '../../../src/core/frame/odds.ts'
import { materialOf, printedPart, typedItem } from '../../support/ledgerParts.ts'

const NONE = { items: [], weighedG: {} }

describe('massDoubt', () => {
  const parts = [printedPart('arm', 15, 4), printedPart('foot', 3, 4, materialOf('tpu-95a'))]

  it('shares a spool between parts of one material, and the printer between all', () => {
    const doubt = massDoubt([...parts, printedPart('deck', 60, 1)], NONE)
    expect(doubt.shared.map(({ id }) => id)).toEqual(['spool:pla', 'spool:tpu-95a', 'printer'])
    expect(doubt.masses.map(({ sharedIds }) => sharedIds[0])).toEqual([
      'spool:pla',
      'spool:tpu-95a',
      'spool:pla',
    ])
  })

  it('splits without loss: the pieces of a part’s error put together are its range', () => {
    const [part] = parts
    const doubt = massDoubt(parts, NONE)
    const sides = (['low', 'high'] as const).map((side) =>
      Math.hypot(
        doubt.masses[0]!.spread[side],
        doubt.shared[0]!.spread[side],
        doubt.shared[2]!.spread[side],
      ),
    )
    const { low, mid, high } = part!.figures.massG
    expect(sides[0]).toBeCloseTo(1 - low / mid, 9)
    expect(sides[1]).toBeCloseTo(high / mid - 1, 9)
  })

  it('leaves a weighed part nothing but the scale and the scatter of its pieces', () => {
    const doubt = massDoubt(parts, { items: [], weighedG: { arm: 15.5 } })
    expect(doubt.masses[0]).toMatchObject({ massG: 62, sharedIds: [], spreadWeighed: null })
    expect(doubt.masses[0]?.spread.low).toBeCloseTo(0.01, 9)
    expect(doubt.shared.map(({ id }) => id)).toEqual(['spool:tpu-95a', 'printer'])
  })

  it('asks for no measurement whose result could not be typed in', () => {
    const doubt = massDoubt(parts, { items: [typedItem('pack', 180, {})], weighedG: {} })
    const texts = massOdds(doubt, 300).measurements.map(({ text }) => text)
    expect(texts.length).toBeGreaterThan(3)
    for (const text of texts)
      expect(text).toMatch(/^(Weigh one “|Type the density of your own spool)/)
  })

  it('trusts items by how they are known', () => {
    const spread = (more: Parameters<typeof typedItem>[2]) =>
      massDoubt([], { items: [typedItem('a', 40, more)], weighedG: {} }).masses[0]!.spread.high
    const weighed = spread({ status: 'weighed' })
    const sheet = spread({ status: 'calculated' })
    const guess = spread({ status: 'estimated' })
    expect(weighed).toBeLessThan(sheet)
    expect(sheet).toBeLessThan(guess)
    expect(spread({ status: 'calculated', basis: 'published' })).toBeLessThan(
      spread({ status: 'calculated', basis: 'computed' }),
    )
    expect(spread({ status: 'estimated', basis: 'memory' })).toBeGreaterThan(guess)
  })
})
