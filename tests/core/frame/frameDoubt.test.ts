import { describe, expect, it } from 'vitest'
import { chanceBelow } from '../../../src/core/doubt/bell.ts'
import { frameDoubt } from '../../../src/core/frame/frameDoubt.ts'
import { clockDoubt } from '../../../src/core/doubt/factors.ts'
import { PRINTER_DEFAULT as PRINTER } from '../../../src/core/data/printers.ts'
import type { WholeWeighing } from '../../../src/core/model/readings.ts'
import { wholeReadings } from '../../../src/core/frame/frameReadings.ts'
import { learnedHours, learnedOf } from '../../../src/core/frame/learned.ts'
import { lessonsOf } from '../../../src/core/frame/lessonsOf.ts'
import { measurable } from '../../../src/core/frame/measurements.ts'
import { doubtedPart, onScale } from '../../support/doubtedParts.ts'
import { materialOf, typedItem } from '../../support/ledgerParts.ts'

const deck = (weighed: ReturnType<typeof onScale> | null) =>
  doubtedPart('deck', 30, 1, materialOf('pla'), { weighed })
const arms = doubtedPart('arm', 20, 4)

describe('frameDoubt', () => {
  it('learns from a deck of 33 g instead of 30 what four arms of its spool weigh', () => {
    const doubt = frameDoubt([deck(onScale(33)), arms], [])
    const arm = doubt.bell('mass', 'flying', ['arm'])
    expect(Math.abs(arm.mean - 87.7)).toBeLessThan(0.3)
    expect(Math.abs(arm.sigma - 1.3)).toBeLessThan(0.3)
    expect(chanceBelow(doubt.allUpBell, 110)).toBeLessThan(0.02)
  })

  it('gives a weighed part what the scale said, to the last digit, all its pieces', () => {
    const four = doubtedPart('arm', 20, 4, materialOf('pla'), { weighed: onScale(22.05) })
    const doubt = frameDoubt([four, doubtedPart('deck', 30, 1)], [])
    expect(doubt.bell('mass', 'flying', ['arm']).mean).toBeCloseTo(4 * 22.05, 9)
    const both = doubt.bell('mass', 'flying', ['arm', 'deck']).mean
    expect(both).toBeCloseTo(4 * 22.05 + doubt.bell('mass', 'flying', ['deck']).mean, 9)
    expect(doubt.allUpBell.mean).toBeCloseTo(both, 9)
  })

  it('gives spares their own sum, off the same scale', () => {
    const more = { weighed: onScale(22), spares: 2 }
    const doubt = frameDoubt([doubtedPart('arm', 20, 4, materialOf('pla'), more)], [])
    expect(doubt.bell('mass', 'spares', ['arm']).mean).toBeCloseTo(44, 9)
    expect(doubt.bell('mass', 'spares', ['arm']).sigma).toBeGreaterThan(0)
  })

  it('carries what a weighing taught into money', () => {
    const before = frameDoubt([deck(null), arms], [])
    const after = frameDoubt([deck(onScale(33)), arms], [])
    const costOf = (doubt: typeof before) => doubt.bell('cost', 'flying', ['arm'])
    expect(costOf(before).mean).toBe(80)
    expect(costOf(after).mean).toBeGreaterThan(87)
    expect(costOf(after).sigma).toBeLessThan(costOf(before).sigma / 2)
  })

  it('lets the pieces of a weighed item scatter by half a per cent, not by five', () => {
    const motor = typedItem('motor', 30, { quantity: 4, status: 'weighed' })
    const { sigma } = frameDoubt([], [motor]).allUpBell
    expect((2 * sigma) / 120).toBeGreaterThan(0.003)
    expect((2 * sigma) / 120).toBeLessThan(0.01)
  })

  it('trusts items by how they are known', () => {
    const sigma = (more: Parameters<typeof typedItem>[2]) =>
      frameDoubt([], [typedItem('a', 40, more)]).allUpBell.sigma
    const weighed = sigma({ status: 'weighed' })
    const sheet = sigma({ status: 'calculated' })
    const guess = sigma({ status: 'estimated' })
    expect(weighed).toBeLessThan(sheet)
    expect(sheet).toBeLessThan(guess)
    const published = sigma({ status: 'calculated', basis: 'published' })
    expect(published).toBeLessThan(sigma({ status: 'calculated', basis: 'computed' }))
    expect(sigma({ status: 'estimated', basis: 'memory' })).toBeGreaterThan(guess)
  })
})

describe('learnedOf', () => {
  it('tells of each spool that was weighed, and of no other', () => {
    const petg = doubtedPart('cover', 12, 2, materialOf('petg'))
    const doubt = frameDoubt([deck(onScale(33)), arms, petg], [])
    const [pla, ...others] = learnedOf(doubt, 'printer')
    expect(others).toEqual([])
    expect(pla).toMatchObject({ spool: 'pla', printer: 'printer', from: 1 })
    expect(pla?.factor.mid).toBeCloseTo(1.095, 2)
    expect(pla!.factor.low).toBeGreaterThan(1.06)
    expect(pla!.factor.high).toBeLessThan(1.13)
  })

  it('counts no weighing that was set aside', () => {
    expect(learnedOf(frameDoubt([deck(onScale(60)), arms], []), 'printer')).toEqual([])
  })
})

describe('learnedHours', () => {
  it('tells of the printer once a print was timed, lessons of earlier frames with it', () => {
    const timed = { id: 'clock', value: 36, noise: 0.5, trusted: false } as const
    const pieces = [{ lineId: 'time:deck', pieces: 1 }]
    const time = clockDoubt(PRINTER, 0)
    const slow = (part: ReturnType<typeof doubtedPart>) => {
      const { figures } = part
      return { ...part, figures: { ...figures, doubt: { ...figures.doubt, time } } }
    }
    const plain = frameDoubt([slow(deck(null))], [])
    expect(learnedHours(plain, PRINTER)).toBeNull()
    const doubt = frameDoubt([slow(deck(null))], [], [{ ...timed, of: { kind: 'run', pieces } }])
    const learned = learnedHours(doubt, PRINTER)
    expect(learned).toMatchObject({ printer: PRINTER.id, from: 1 })
    // 20 % longer by the clock: pace ± 13 % before, and ± 7 % of the print's own.
    const pace = 0.15 ** 2 - 0.07 ** 2
    const heard = 1 + (0.2 * pace) / (pace + 0.07 ** 2 + (2 * (0.5 / 30)) ** 2)
    expect(learned?.factor.mid).toBeCloseTo(heard, 6)

    const lessons = lessonsOf(doubt, 'frame', PRINTER.id)
    expect(lessons).toMatchObject([{ id: 'frame/clock', of: 'time', materialIds: [] }])
    const later = frameDoubt([slow(arms)], [], [], lessons)
    expect(learnedHours(later, PRINTER, lessons)?.factor.mid).toBeCloseTo(heard, 6)
    expect(learnedOf(later, PRINTER.id, lessons)).toEqual([])
    expect(later.bell('time', 'flying', ['arm']).mean).toBeCloseTo(
      frameDoubt(
        [slow(deck(null)), slow(arms)],
        [],
        [{ ...timed, of: { kind: 'run', pieces } }],
      ).bell('time', 'flying', ['arm']).mean,
      6,
    )
  })
})

describe('a weighing of the whole', () => {
  const parts = [
    deck(null),
    arms,
    doubtedPart('cover', 12, 2, materialOf('petg')),
    doubtedPart('bagged', 12, 0, materialOf('tpu-95a'), { spares: 2 }),
  ]
  const items = [typedItem('pack', 180, { status: 'weighed' })]
  const whole = (allUp: boolean): WholeWeighing => ({
    id: 'whole',
    of: allUp ? 'all-up' : 'printed',
    scaleG: allUp ? 321 : 141,
    tareG: 0,
    stepG: 0.1,
    date: null,
    calculatedG: allUp ? 314 : 134,
    trusted: false,
  })

  it.each([false, true])('counts for each spool that lay on the scale (all-up: %s)', (allUp) => {
    const doubt = frameDoubt(parts, items, wholeReadings([whole(allUp)], parts, items))
    const learned = learnedOf(doubt, 'printer')
    expect(learned.map(({ spool, from }) => [spool, from])).toEqual([
      ['pla', 1],
      ['petg', 1],
    ])
    for (const { factor } of learned) expect(factor.mid).toBeGreaterThan(1.005)
  })

  it('teaches a later frame of one of its spools, less than one part weighed alone would', () => {
    const doubt = frameDoubt(parts, items, wholeReadings([whole(false)], parts, items))
    const lessons = lessonsOf(doubt, 'frame', 'printer')
    expect(lessons).toMatchObject([{ of: 'mass', materialIds: ['pla', 'petg'] }])
    expect(lessons[0]?.ratio).toBeCloseTo(141 / 134, 9)
    const after = frameDoubt([arms], [], [], lessons).bell('mass', 'flying', ['arm'])
    const here = doubt.bell('mass', 'flying', ['arm'])
    expect(after.mean).toBeGreaterThan(82)
    expect(after.mean).toBeLessThan(here.mean)
    expect(after.sigma).toBeLessThan(frameDoubt([arms], []).bell('mass', 'flying', ['arm']).sigma)
  })
})

describe('measurable', () => {
  const doubt = frameDoubt(
    [deck(onScale(33)), arms, doubtedPart('cover', 12, 2, materialOf('petg'))],
    [typedItem('pack', 180), typedItem('motor', 30, { status: 'weighed' })],
  )

  it('asks for no measurement whose result could not be typed in, and for none made', () => {
    expect(measurable(doubt).map(({ text }) => text)).toEqual([
      'Type the density of your own spool of PLA',
      'Type the density of your own spool of PETG',
      'Weigh one “arm”',
      'Weigh one “cover”',
      'Weigh one “pack”',
    ])
  })
})

describe('lessonsOf', () => {
  it('teaches a later frame of the same spool what it would have learned here', () => {
    const here = frameDoubt([deck(onScale(33)), arms], [])
    const lessons = lessonsOf(here, 'frame', 'printer')
    expect(lessons.map(({ id }) => id)).toEqual(['frame/deck'])
    const later = frameDoubt([arms], [], [], lessons)
    const [known, carried] = [here, later].map((doubt) => doubt.bell('mass', 'flying', ['arm']))
    expect(carried!.mean).toBeCloseTo(known!.mean, 9)
    expect(carried!.sigma).toBeCloseTo(known!.sigma, 9)
    expect(learnedOf(later, 'printer', lessons)).toMatchObject([{ spool: 'pla', from: 1 }])
  })

  it('teaches nothing from a weighing that was set aside', () => {
    expect(lessonsOf(frameDoubt([deck(onScale(60)), arms], []), 'frame', 'printer')).toEqual([])
  })
})
