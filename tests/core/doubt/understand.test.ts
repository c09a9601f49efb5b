import { describe, expect, it } from 'vitest'
import { chanceBelow, rangeOf } from '../../../src/core/doubt/bell.ts'
import { blameFor } from '../../../src/core/doubt/blame.ts'
import { bestNext } from '../../../src/core/doubt/next.ts'
import { scaleNoiseG } from '../../../src/core/doubt/readings.ts'
import type { Reading } from '../../../src/core/doubt/readings.ts'
import { understand } from '../../../src/core/doubt/understand.ts'
import { printedLine, weighed } from '../../support/doubtLines.ts'
import { materialOf } from '../../support/ledgerParts.ts'

const deck = printedLine('deck', 30, 1)
const arms = printedLine('arm', 20, 4)

describe('a deck at 33 g instead of 30', () => {
  const known = understand([deck, arms], [weighed('deck', 33)])
  const arm = known.bell(known.line('arm'))

  it('teaches four arms of the same spool', () => {
    // 33/30 of 80 g is 88 g; some of the surplus is the deck's own.
    expect(Math.abs(arm.mean - 87.7)).toBeLessThan(0.3)
    expect(Math.abs(arm.sigma - 1.3)).toBeLessThan(0.3)
  })

  it('leaves them no chance to stay below 110 g together', () => {
    const total = known.bell(known.sum(['deck', 'arm']))
    expect(chanceBelow(total, 110)).toBeLessThan(0.02)
    const before = understand([deck, arms], [])
    expect(chanceBelow(before.bell(before.sum(['deck', 'arm'])), 110)).toBeGreaterThan(0.4)
  })

  it('stands for the deck itself, to what the scale leaves unsure', () => {
    const { mean, sigma } = known.bell(known.line('deck'))
    expect(Math.abs(mean - 33)).toBeLessThan(0.05)
    expect(sigma).toBeLessThan(0.1)
  })

  it('teaches little about arms of another spool, and of the printer what they share', () => {
    const other = printedLine('arm', 20, 4, materialOf('petg'))
    const two = understand([deck, other], [weighed('deck', 33)])
    expect(two.bell(two.line('arm')).mean).toBeLessThan(81)
  })
})

describe('totals', () => {
  it('shrink where errors are independent and add end to end where they are shared', () => {
    const shares = { packed: 0, count: 0.1 }
    const plain = { ...printedLine('a', 10, 1, materialOf('pla'), shares), scatter: 0 }
    const own = { ...plain, doubt: { shared: [], own: 0.05 } }
    const nine = Array.from({ length: 9 }, (_, i) => ({ ...own, id: `own ${i}` }))
    const alone = understand(nine, [])
    const all = nine.map(({ id }) => id)
    expect(alone.bell(alone.sum(all)).sigma).toBeCloseTo(3 * 0.5, 9)
    const doubt = { shared: [{ id: 'spool', name: 'Spool', effect: 0.05 }], own: 0 }
    const tied = understand(
      nine.map((line) => ({ ...line, doubt })),
      [],
    )
    expect(tied.bell(tied.sum(all)).sigma).toBeCloseTo(9 * 0.5, 9)
  })

  it('do not add mixed plastics end to end', () => {
    const petg = printedLine('petg', 40, 1, materialOf('petg'))
    const pla = printedLine('pla', 40, 1)
    const known = understand([petg, pla], [])
    const [a, b] = ['petg', 'pla'].map((id) => known.bell(known.line(id)).sigma)
    const both = known.bell(known.sum(['petg', 'pla'])).sigma
    expect(both).toBeLessThan(0.8 * (a! + b!))
    expect(both).toBeGreaterThan(Math.hypot(a!, b!) - 1e-9)
  })

  it('narrow when a density is typed, by what density was to blame for', () => {
    const pla = materialOf('pla')
    const of = (typed: boolean): number => {
      const known = understand([printedLine('a', 20, 4, { ...pla, densityTyped: typed })], [])
      return known.bell(known.line('a')).sigma / 80
    }
    // 6 % of density (5.6 % below, 6.5 % above, lopsided) becomes 1 %.
    expect(of(false) ** 2 - of(true) ** 2).toBeCloseTo(
      0.03 ** 2 - 0.03 * 0.03226 + 0.03226 ** 2 - 0.005 ** 2,
      5,
    )
  })
})

describe('readings', () => {
  const lines = [deck, arms, printedLine('cover', 12, 2)]

  it('of a set say more than of one piece', () => {
    const one = understand(lines, [weighed('arm', 21, 1)])
    const set = understand(lines, [weighed('arm', 84, 4)])
    const sigma = (known: typeof one) => known.bell(known.line('arm')).sigma
    expect(sigma(set)).toBeLessThan(sigma(one) / 1.4)
    expect(set.bell(set.line('arm')).mean).toBeCloseTo(84, 1)
  })

  it('of more pieces than fly leave the others in the bag', () => {
    const six = understand(lines, [weighed('arm', 126, 6)])
    expect(six.bell(six.line('arm')).mean).toBeCloseTo(84, 0)
  })

  it('of the whole printed frame move every line that shares an error', () => {
    const whole: Reading = {
      id: 'frame',
      value: 143,
      noise: scaleNoiseG(143, 1, false),
      of: { kind: 'whole', lineIds: lines.map(({ id }) => id), unlisted: 0 },
      trusted: false,
    }
    const known = understand(lines, [whole])
    const total = known.bell(known.sum(['deck', 'arm', 'cover']))
    expect(Math.abs(total.mean - 143)).toBeLessThan(0.3)
    expect(total.sigma).toBeLessThan(0.6)
    const share = known.bell(known.line('arm')).mean / 80
    expect(Math.abs(share - 143 / 134)).toBeLessThan(0.01)
  })

  it('of all but one line together with the whole tell that line', () => {
    const whole: Reading = {
      id: 'frame',
      value: 143,
      noise: 0.5,
      of: { kind: 'whole', lineIds: lines.map(({ id }) => id), unlisted: 0 },
      trusted: false,
    }
    const known = understand(lines, [whole, weighed('deck', 32), weighed('arm', 85.6, 4)])
    const cover = known.bell(known.line('cover'))
    expect(Math.abs(cover.mean - (143 - 32 - 85.6))).toBeLessThan(0.4)
  })

  it('of any size and number are heard without falling over', () => {
    const lineIds = lines.map(({ id }) => id)
    const of = { kind: 'whole', lineIds, unlisted: 0 } as const
    const many = [1e-6, 1e6, 1e6, 143, Number.NaN, Infinity].map((value, i): Reading => {
      return { id: `whole ${i}`, value, noise: 1e-6, of, trusted: i < 3 }
    })
    const odd = [weighed('arm', 1e9, 4), weighed('deck', 1e-9)]
    const known = understand(lines, [...many, ...odd])
    for (const id of lineIds) expect(Number.isFinite(known.bell(known.line(id)).mean)).toBe(true)
  })

  it('of what is no longer there teach nothing', () => {
    const known = understand([arms], [weighed('deck', 33)])
    expect(known.bell(known.line('arm')).mean).toBe(80)
    expect(known.strays).toEqual([])
  })

  it('say less on a coarse scale, and a little less with a tare', () => {
    const of = (stepG: number, tare: boolean): number => {
      const noise = scaleNoiseG(22, stepG, tare)
      const known = understand(lines, [{ ...weighed('arm', 22), noise }])
      return known.bell(known.line('arm')).sigma
    }
    expect(of(0.1, false)).toBeLessThan(of(0.1, true))
    expect(of(0.1, true)).toBeLessThan(of(1, false))
  })
})

describe('a reading far outside', () => {
  const five = ['a', 'b', 'c', 'd', 'e'].map((id) => printedLine(id, 20, 2))
  const arm = printedLine('arm', 20, 4)
  const readings = five.map(({ id }, i) => weighed(id, i === 2 ? 26 : 20.2))

  it('does not win against four others, and is named', () => {
    const known = understand([...five, arm], readings)
    expect(known.strays.map(({ id }) => id)).toEqual(['weighed c'])
    const mean = known.bell(known.line('arm')).mean
    const without = understand(
      [...five, arm],
      readings.filter((_, i) => i !== 2),
    )
    expect(mean).toBeCloseTo(without.bell(without.line('arm')).mean, 3)
    expect(Math.abs(mean - 80.8)).toBeLessThan(0.4)
  })

  it('still tells of the line it was read from', () => {
    const known = understand([...five, arm], readings)
    expect(known.bell(known.line('c')).mean).toBeCloseTo(52, 1)
  })

  it('says what was foretold', () => {
    const [stray] = understand([...five, arm], readings).strays
    expect(stray?.value).toBe(26)
    expect(Math.abs(stray!.foretold.mean - 20.2)).toBeLessThan(0.2)
  })

  it('is asked about when it is the only one, and believed when its user stands by it', () => {
    const odd = weighed('a', 30)
    const doubted = understand([...five, arm], [odd])
    expect(doubted.strays.length).toBe(1)
    expect(doubted.bell(doubted.line('arm')).mean).toBeCloseTo(80, 2)
    const believed = understand([...five, arm], [{ ...odd, trusted: true }])
    expect(believed.strays).toEqual([])
    expect(believed.bell(believed.line('arm')).mean).toBeGreaterThan(110)
  })

  it('cannot hide behind a second', () => {
    const two = readings.map((one, i) => (i === 4 ? { ...one, value: 14 } : one))
    const known = understand([...five, arm], two)
    expect(known.strays.map(({ id }) => id).toSorted()).toEqual(['weighed c', 'weighed e'])
  })

  it('of everything at once is set aside without moving a line', () => {
    const lineIds = five.map(({ id }) => id)
    const whole: Reading = {
      id: 'frame',
      value: 300,
      noise: 1,
      of: { kind: 'whole', lineIds, unlisted: 0 },
      trusted: false,
    }
    const known = understand(five, [whole])
    expect(known.strays.map(({ id }) => id)).toEqual(['frame'])
    expect(known.bell(known.sum(lineIds)).mean).toBeCloseTo(200, 6)
  })
})

describe('what earlier frames taught', () => {
  it('moves a new frame as a weighing in it would, the line’s own error apart', () => {
    const { doubt, each } = deck
    const lesson = {
      id: 'lesson',
      of: 'mass' as const,
      materialIds: ['pla'],
      printerId: 'printer',
      shared: doubt.shared,
      ratio: 1.1,
      noise: Math.hypot(doubt.own, 0.005, scaleNoiseG(33, 0.1, false) / each),
    }
    const carried = understand([arms], [], [lesson])
    const live = understand([deck, arms], [weighed('deck', 33)])
    expect(carried.bell(carried.line('arm')).mean).toBeCloseTo(live.bell(live.line('arm')).mean, 9)
    expect(carried.bell(carried.line('arm')).sigma).toBeCloseTo(
      live.bell(live.line('arm')).sigma,
      9,
    )
  })
})

describe('whom to blame and what to weigh next', () => {
  const lines = [deck, arms, printedLine('cover', 12, 2, materialOf('petg'))]
  const known = understand(lines, [])
  const total = known.sum(['deck', 'arm', 'cover'])
  it('shares the variance out without rest', () => {
    for (const state of [known, understand(lines, [weighed('deck', 32)])]) {
      const blame = blameFor(total, state.belief)
      expect(blame.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 9)
      expect(blame.map(({ share }) => share)).toEqual(
        blame.map(({ share }) => share).toSorted((a, b) => b - a),
      )
    }
  })

  it('foretells what a weighing does to the doubt, whatever it will say', () => {
    const candidates = lines.map(({ id, each }) => ({
      id,
      text: id,
      form: known.next(id)!,
      noise: scaleNoiseG(each, 0.1, false),
    }))
    const foretold = bestNext(total, known.belief, candidates)
    expect(foretold.map(({ id }) => id).toSorted()).toEqual(['arm', 'cover', 'deck'])
    for (const { id, gain, sigmaAfter } of foretold) {
      for (const share of [1, 1.05]) {
        const { each } = lines.find((line) => line.id === id)!
        const reading = { ...weighed(id, each * share), noise: scaleNoiseG(each, 0.1, false) }
        const after = understand(lines, [reading])
        const { sigma } = after.bell(after.sum(['deck', 'arm', 'cover']))
        expect(sigmaAfter).toBeCloseTo(sigma, 9)
        expect(gain).toBeCloseTo(1 - (sigma / known.bell(total).sigma) ** 2, 9)
        expect(after.next(id) === null).toBe(id === 'deck')
      }
    }
  })

  it('has nothing to say where nothing is in doubt', () => {
    const sure = { ...deck, doubt: { shared: [], own: 0 }, scatter: 0 }
    const state = understand([sure], [])
    expect(blameFor(state.line('deck'), state.belief)).toEqual([])
    expect(bestNext(state.line('deck'), state.belief, [])).toEqual([])
    expect(rangeOf(state.bell(state.line('deck')))).toEqual({ low: 30, mid: 30, high: 30 })
    expect(chanceBelow(state.bell(state.line('deck')), 30)).toBe(0)
    expect(chanceBelow(state.bell(state.line('deck')), 30.1)).toBe(1)
  })
})
