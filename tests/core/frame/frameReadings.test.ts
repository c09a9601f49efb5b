import { describe, expect, it } from 'vitest'
import { frameDoubt } from '../../../src/core/frame/frameDoubt.ts'
import type { DoubtedPart } from '../../../src/core/frame/frameDoubt.ts'
import { clockReadings, wholeReadings } from '../../../src/core/frame/frameReadings.ts'
import type { ClockTime, WholeWeighing } from '../../../src/core/model/readings.ts'
import { doubtedPart } from '../../support/doubtedParts.ts'
import { typedItem } from '../../support/ledgerParts.ts'

const WHOLE: WholeWeighing = {
  id: 'whole',
  of: 'printed',
  scaleG: 121,
  tareG: 0,
  stepG: 1,
  date: null,
  calculatedG: 110,
  trusted: false,
}
const parts = [doubtedPart('deck', 30, 1), doubtedPart('arm', 20, 4)]
const items = [typedItem('pack', 180, { status: 'weighed' })]

describe('a whole frame on the scale', () => {
  const totalOf = (whole: WholeWeighing, all = parts, bought = items) => {
    const doubt = frameDoubt(all, bought, wholeReadings([whole], all, bought))
    return doubt.bell(
      'mass',
      'flying',
      all.map(({ id }) => id),
    )
  }

  it('tells the sum, and of each part what it shares with the others', () => {
    const { mean, sigma } = totalOf(WHOLE)
    expect(Math.abs(mean - 121)).toBeLessThan(0.4)
    expect(sigma).toBeLessThan(0.7)
  })

  it('is read less its tare', () => {
    const tared = totalOf({ ...WHOLE, scaleG: 371, tareG: 250 })
    expect(Math.abs(tared.mean - 121)).toBeLessThan(0.6)
    expect(tared.sigma).toBeGreaterThan(totalOf(WHOLE).sigma)
  })

  it('of the aircraft tells the printed parts what the bought ones leave, and less surely', () => {
    const allUp = totalOf({ ...WHOLE, of: 'all-up', scaleG: 301, calculatedG: 290 })
    expect(allUp.mean).toBeGreaterThan(114)
    expect(allUp.mean).toBeLessThan(121)
    expect(allUp.sigma).toBeGreaterThan(2 * totalOf(WHOLE).sigma)
  })

  it('keeps what it was off by when the frame was changed since, less surely', () => {
    const heavier = [doubtedPart('deck', 60, 1), doubtedPart('arm', 20, 4)]
    const { mean, sigma } = totalOf(WHOLE, heavier)
    expect(Math.abs(mean / 140 - 1.1)).toBeLessThan(0.01)
    expect(sigma).toBeGreaterThan(totalOf(WHOLE).sigma)
  })
})

describe('a print by the clock', () => {
  // Times of an hour and a half and of twenty minutes, off by the printer's pace and their own.
  const timed = (id: string, timeS: number, quantity = 1): DoubtedPart => {
    const part = doubtedPart(id, 20, quantity)
    const time = {
      shared: [{ id: 'pace:printer', name: 'Pace', effect: 0.066 }],
      own: 0.035,
    }
    const doubt = { ...part.figures.doubt, time }
    const range = { low: timeS, mid: timeS, high: timeS }
    return { ...part, aloneS: timeS, figures: { ...part.figures, timeS: range, doubt } }
  }
  const deck = timed('deck', 5400)
  const arm = timed('arm', 1200, 4)
  const START_S = 300
  const PRINTER = { id: 'printer', startS: START_S }
  const clock = (pieces: ClockTime['pieces'], timeS: number, calculatedS: number): ClockTime => ({
    id: 'clock',
    pieces,
    timeS,
    calculatedS,
    date: null,
    trusted: false,
  })
  const armS = (one: ClockTime) => {
    const doubt = frameDoubt([deck, arm], [], clockReadings([one], [deck, arm], PRINTER))
    return doubt.bell('time', 'flying', ['arm'])
  }

  it('teaches the hours of all the others; nobody works out a ratio', () => {
    const { mean, sigma } = armS(clock({ deck: 1 }, 6480, 5400))
    // A fifth more by the clock, of which the print's own error may have had its share.
    expect(mean / 4800).toBeGreaterThan(1.14)
    expect(mean / 4800).toBeLessThan(1.2)
    expect((2 * sigma) / mean).toBeLessThan(0.1)
  })

  it('teaches the same whatever the pieces take beside others', () => {
    const beside = { ...arm, figures: { ...arm.figures, timeS: { low: 900, mid: 900, high: 900 } } }
    const ratio = (printed: readonly DoubtedPart[], alone: number) => {
      const readings = clockReadings([clock({ arm: 2 }, 2310, 2100)], printed, PRINTER)
      return frameDoubt(printed, [], readings).bell('time', 'flying', ['arm']).mean / alone
    }
    expect(ratio([deck, beside], 4 * 900)).toBeCloseTo(ratio([deck, arm], 4 * 1200), 9)
  })

  it('of a run as it was laid is held against its layers together', () => {
    const beside = { ...arm, figures: { ...arm.figures, timeS: { low: 900, mid: 900, high: 900 } } }
    const one = { ...clock({ arm: 4 }, 1.1 * 3600, 3600), beside: true as const }
    const [reading] = clockReadings([one], [deck, beside], PRINTER)
    expect(reading!.value).toBeCloseTo(1.1 * 4 * 900, 9)
    // Laid anew since, the ratio stays.
    const closer = { ...arm, figures: { ...arm.figures, timeS: { low: 600, mid: 600, high: 600 } } }
    expect(clockReadings([one], [closer], PRINTER)[0]!.value).toBeCloseTo(1.1 * 4 * 600, 9)
  })

  it('of a run of pieces counts its start once', () => {
    const four = 4 * 1200 - 3 * START_S
    expect(armS(clock({ arm: 4 }, four, four)).mean).toBeCloseTo(4800, 6)
    expect(armS(clock({ arm: 4 }, 1.1 * four, four)).mean).toBeGreaterThan(4800 * 1.07)
  })

  it('of a part that is gone teaches nothing', () => {
    expect(clockReadings([clock({ gone: 1 }, 6480, 5400)], [deck, arm], PRINTER)).toEqual([])
  })
})
