import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { findFront } from '../../../src/core/choose/findFront.ts'
import { thinFront } from '../../../src/core/choose/thinFront.ts'
import type { Option, PartOptions } from '../../../src/core/choose/types.ts'
import { asWanted, type Wants } from '../../../src/core/choose/wants.ts'
import { whyNone } from '../../../src/core/choose/whyNone.ts'
import { bindingWords } from '../../../src/core/choose/sayings.ts'
import { RECIPE_DEFAULTS } from '../../../src/core/model/settings.ts'

function option(massG: number, timeS: number, cost: number, stiffness: number): Option {
  return {
    massG,
    timeS,
    cost,
    stiffness,
    way: { recipe: RECIPE_DEFAULTS, materialId: 'pla' },
    census: null,
  }
}

function run<R>(steps: Generator<unknown, R, void>): R {
  for (;;) {
    const step = steps.next()
    if (step.done === true) return step.value
  }
}

const PARTS: readonly PartOptions[] = [
  {
    partId: 'arm',
    options: [option(50, 100, 3, 1), option(40, 80, 2, 0.6), option(46, 90, 3, 0.9)],
  },
  { partId: 'deck', options: [option(30, 60, 2, 1), option(24, 50, 1, 0.5)] },
]
const wants = (given: Partial<Wants>): Wants => ({
  ceilings: {},
  floors: new Map(),
  free: new Set(),
  ...given,
})

describe('whyNone', () => {
  it('says of one limit by how much it is out of reach', () => {
    const asked = wants({ ceilings: { massG: 60 } })
    // 40 and 24 by hand.
    expect(run(whyNone(PARTS, asked))).toEqual([
      { limit: 'massG', asked: 60, reachable: 64, alone: 64 },
    ])
  })

  it('tells the price of a floor and of a ceiling that exclude one another', () => {
    const asked = wants({ ceilings: { massG: 66, timeS: 1000 }, floors: new Map([['arm', 0.9]]) })
    expect(run(findFront(asWanted(PARTS, asked), asked.ceilings))).toEqual([])
    // With the arm at 0.9 the least is 46 + 24; within 66 g the arm keeps 0.6 of the 0.9 asked.
    expect(run(whyNone(PARTS, asked))).toEqual([
      { limit: 'massG', asked: 66, reachable: 70, alone: 64 },
      { limit: 'timeS', asked: 1000, reachable: null, alone: 130 },
      { limit: 'stiffness', asked: 1, reachable: 0.6 / 0.9, alone: 1 / 0.9 },
    ])
  })

  it('says of a floor that no option meets what the stiffest has', () => {
    const asked = wants({ floors: new Map([['deck', 2]]) })
    expect(run(whyNone(PARTS, asked))).toEqual([
      { limit: 'stiffness', asked: 1, reachable: 0.5, alone: 0.5 },
    ])
  })

  it('says of one part how far it gives and how it rings at best, and what else stands in the way', () => {
    const given = (massG: number, deflectionMm: number, firstHz: number): Option => ({
      ...option(massG, 1, 1, 1),
      gives: { deflectionMm, firstHz },
    })
    const parts = [
      { partId: 'arm', options: [given(50, 2, 90), given(60, 1.5, 110), given(70, 1, 120)] },
      { partId: 'deck', options: [option(30, 1, 1, 1), option(20, 1, 1, 1)] },
    ]
    const asked = wants({
      ceilings: { massG: 85 },
      gives: new Map([['arm', { deflectionMm: 1.2, firstHz: 100 }]]),
    })
    expect(run(findFront(asWanted(parts, asked), asked.ceilings))).toEqual([])
    // Within 85 g the deck at 20 leaves 65 for the arm: 1.5 mm at best. 1.2 mm wants 70 and 20.
    expect(run(whyNone(parts, asked))).toEqual([
      { limit: 'massG', asked: 85, reachable: 90, alone: 70 },
      { limit: 'deflectionMm', partId: 'arm', asked: 1.2, reachable: 1.5, alone: 1 },
      { limit: 'firstHz', partId: 'arm', asked: 100, reachable: null, alone: 120 },
    ])
    const met = wants({ ...asked, ceilings: { massG: 90 } })
    const [found] = run(findFront(asWanted(parts, met), met.ceilings))
    expect(found).toMatchObject({ massG: 90 })
    expect(bindingWords(run(whyNone(parts, asked)), 'EUR', (id) => `the ${id}`, 'en')).toEqual([
      'Grams stand in the way: with all else as asked the least is 90.0\u00a0g, ' +
        '5.0\u00a0g more than the 85.0\u00a0g asked for.',
      'How far the arm gives stands in the way: with all else as asked the least is ' +
        '1.5\u00a0mm, 0.3\u00a0mm more than the 1.2\u00a0mm asked for.',
    ])
  })

  it('meets no limit of a part that nothing is known of', () => {
    const asked = wants({ gives: new Map([['deck', { firstHz: 50 }]]) })
    const none = run(whyNone(PARTS, asked))
    expect(none).toMatchObject([{ limit: 'firstHz', partId: 'deck', alone: 0 }])
    expect(bindingWords(none, 'EUR', (id) => id)[0]).toMatch(/^Nothing is known of how deck gives/)
  })

  it('asks nothing of a free part', () => {
    const asked = wants({ floors: new Map([['deck', 2]]), free: new Set(['deck']) })
    const [lightest] = run(findFront(asWanted(PARTS, asked)))
    expect(lightest).toMatchObject({ massG: 64, stiffness: 0.6 })
  })
})

describe('thinFront', () => {
  it('keeps the best of each measure, as many as wanted, in their order', () => {
    const worth = fc.record({
      massG: fc.nat(99),
      timeS: fc.nat(99),
      cost: fc.nat(99),
      stiffness: fc.nat(99),
    })
    fc.assert(
      fc.property(fc.array(worth, { minLength: 6 }), (all) => {
        const some = thinFront(all, 5)
        expect(some).toHaveLength(5)
        expect(some.map((one) => all.indexOf(one))).toEqual(
          some.map((one) => all.indexOf(one)).toSorted((a, b) => a - b),
        )
        expect(Math.min(...some.map(({ massG }) => massG))).toBe(
          Math.min(...all.map(({ massG }) => massG)),
        )
        expect(Math.max(...some.map(({ stiffness }) => stiffness))).toBe(
          Math.max(...all.map(({ stiffness }) => stiffness)),
        )
      }),
      { numRuns: 50, seed: 18 },
    )
    expect(
      thinFront(
        [1, 2].map((massG) => ({ massG, timeS: 0, cost: 0, stiffness: 1 })),
        5,
      ),
    ).toHaveLength(2)
  })
})
