import { describe, expect, it } from 'vitest'
import { chanceBelow } from '../../../src/core/doubt/bell.ts'
import { frameDoubt } from '../../../src/core/frame/frameDoubt.ts'
import { learnedOf } from '../../../src/core/frame/learned.ts'
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
