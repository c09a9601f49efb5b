import { describe, expect, test } from 'vitest'
import {
  chanceWords,
  leftOutNames,
  leftOutOfAll,
  leftOutWords,
  limitWords,
  piecesWords,
  roundChance,
  standingWords,
} from '../../../src/core/frame/sayings.ts'
import { weighFrame } from '../../../src/core/frame/weighFrame.ts'
import { bareFrame, printedPart, typedItem } from '../../support/ledgerParts.ts'

const PARTS = [printedPart('arm', 10, 4)]

/** 40 g printed and 60 g bought; growth of 5 % and 10 % makes 108 g of it. */
function standing(limitG: number | null): string {
  const growth = { estimatedPct: 10, calculatedPct: 5, weighedPct: 0 }
  const frame = bareFrame({ items: [typedItem('pack', 60)], growth, limitG })
  return standingWords(weighFrame(PARTS, frame), 'en')
}

describe('what is said of a frame', () => {
  test('limit, odds and growth are one sentence, both ways from the limit', () => {
    const now =
      /^100\.0 g as it stands, 4\.0 g under the limit of 104\.0 g and \d+ % likely to end below/
    const then = /(, too close to say)?; but with the growth to expect 108\.0 g, 4\.0 g over it\.$/
    expect(standing(104)).toMatch(new RegExp(now.source + then.source))
    expect(standing(90)).toMatch(/10\.0 g over the limit .*; with the growth .* 18\.0 g over it\.$/)
    expect(standing(200)).toMatch(
      /100\.0 g under .*>99\.99 % .*; with the growth .* 92\.0 g under it\.$/,
    )
    expect(standing(null)).toBe('100.0 g as it stands, 108.0 g with the growth to expect.')
  })

  test('within 3 % of the limit nobody is told yes or no', () => {
    expect(standing(102)).toContain('too close to say')
    expect(standing(130)).not.toContain('too close to say')
  })

  test('the stricter limit is named, in grams of printed parts', () => {
    const limits = (limitG: number | null, printedLimitG: number | null) =>
      weighFrame(PARTS, bareFrame({ items: [typedItem('pack', 60)], limitG, printedLimitG })).limits
    expect(limitWords(limits(110, 45).strictest!, 'en')).toBe(
      '5.0 g under the printed limit of 45.0 g',
    )
    expect(limitWords(limits(95, 45).strictest!, 'en')).toBe(
      '5.0 g over the 35.0 g that the all-up limit leaves',
    )
    expect(limits(null, null).strictest).toBeNull()
    // Never “0.0 g over”.
    expect(limitWords(limits(null, 39.98).strictest!, 'en')).toBe(
      'just over the printed limit of 40.0 g',
    )
    expect(limitWords(limits(null, 40).strictest!, 'en')).toBe(
      'just at the printed limit of 40.0 g',
    )
  })

  test('what is left out is counted, and named with why', () => {
    const arm = { id: 'a', name: 'Arm', why: 'failed', weighed: false } as const
    const deck = { id: 'd', name: 'Deck', why: 'not counted yet', weighed: false } as const
    expect(leftOutWords([], 'mass')).toBeNull()
    expect(leftOutWords([arm, deck], 'mass')).toBe('without 2 parts')
    expect(leftOutNames([arm])).toBe('without 1 part: “Arm” (failed)')
    const weighed = { ...deck, weighed: true }
    expect(leftOutWords([weighed], 'mass')).toBeNull()
    expect(leftOutWords([weighed], 'cost and hours')).toBe('without 1 part')
    expect(leftOutOfAll([weighed])).toBe('cost and hours without 1 part')
    expect(leftOutOfAll([arm, weighed])).toBe('without 1 part, cost and hours without 2 parts')
    expect(leftOutNames([weighed])).toBe(
      'cost and hours without 1 part: “Deck” (not counted yet, by the scale)',
    )
  })

  test('pieces that fly and those in the bag are counted in the same words everywhere', () => {
    expect(piecesWords(1, 0)).toBe('1 piece')
    expect(piecesWords(16, 3)).toBe('16 pieces and 3 spare')
  })

  test('a chance is never a full 0 or 100', () => {
    expect([1e-235, 0.004, 0.42, 0.996, 1].map((chance) => chanceWords(chance, 'en'))).toEqual([
      '<0.01 %',
      '<1 %',
      '42 %',
      '>99 %',
      '>99.99 %',
    ])
    expect(chanceWords(0, 'de')).toBe('<0,01 %')
    expect([1e-235, 0.123456, 1].map(roundChance)).toEqual([0.0001, 0.1235, 0.9999])
  })
})
