import { describe, expect, it } from 'vitest'
import { weighFrame } from '../../../src/core/frame/weighFrame.ts'
import { bareFrame, materialOf, printedPart, typedItem } from '../../support/ledgerParts.ts'

const PARTS = [printedPart('arm', 8, 4, { spares: 2 }), printedPart('deck', 28, 1)]

describe('weighFrame', () => {
  const sum = weighFrame(PARTS, bareFrame())

  it('weighs what flies and pays for what is printed', () => {
    expect(sum.printed.massG.mid).toBeCloseTo(4 * 8 + 28, 9)
    expect(sum.printed.pieces).toBe(5)
    expect(sum.spares.massG.mid).toBeCloseTo(16, 9)
    expect(sum.withSpares.timeS.mid).toBeCloseTo((6 * 8 + 28) * 240, 6)
    expect(sum.withSpares.cost.mid).toBeCloseTo((6 * 8 + 28) / 50, 9)
    expect(sum.withSpares.filamentM).toBeCloseTo((6 * 8 + 28) / 3, 9)
    expect(sum.withSpares.pieces).toBe(7)
  })

  it('adds what a spool is off by for all its parts, and what parts are off by themselves less', () => {
    const [arm, deck] = sum.rows
    const endToEnd = arm!.flying.massG.high + deck!.flying.massG.high
    expect(sum.printed.massG.high).toBeLessThan(endToEnd)
    const share = sum.printed.massG.high / sum.printed.massG.mid - 1
    expect(share).toBeGreaterThan(0.95 * (arm!.flying.massG.high / arm!.flying.massG.mid - 1))
    const petg = [PARTS[0]!, printedPart('deck', 28, 1, { material: materialOf('petg') })]
    const mixed = weighFrame(petg, bareFrame()).printed.massG
    expect(mixed.high / mixed.mid - 1).toBeLessThan(0.85 * share)
  })

  it('splits into shares that sum to one', () => {
    for (const key of ['massShare', 'costShare', 'timeShare'] as const) {
      expect(sum.rows.reduce((all, row) => all + row[key], 0)).toBeCloseTo(1, 9)
    }
    expect(sum.rows[0]!.massShare).toBeCloseTo(32 / 60, 9)
  })

  it('has one mass: rows, ledger and total agree to the last digit, weighed or not', () => {
    const weighed = [
      PARTS[0]!,
      printedPart('deck', 28, 1, { scaleG: 30.8 }),
      printedPart('foot', 3, 4, { material: materialOf('tpu-95a'), scaleG: 2.9 }),
    ]
    const items = [typedItem('pack', 185, { status: 'weighed' })]
    const frame = weighFrame(weighed, bareFrame({ items }))
    const rows = frame.rows.reduce((all, row) => all + row.flying.massG.mid, 0)
    const lines = frame.ledger.lines.filter(({ group }) => group === 'printed')
    const ledger = lines.reduce((all, line) => all + line.massTotalG, 0)
    expect(frame.printed.massG.mid).toBeCloseTo(rows, 9)
    expect(frame.printed.massG.mid).toBeCloseTo(ledger, 9)
    expect(frame.allUpG.mid).toBeCloseTo(frame.ledger.basicMassG, 9)
    // The arms are of the deck's spool, and were reckoned as light as it.
    expect(frame.rows[0]!.pieceG.mid).toBeGreaterThan(8.5)
    expect(frame.rows[0]!.figures!.massG.mid).toBe(8)
    expect(frame.rows[1]!.pieceG.mid).toBeCloseTo(30.8, 9)
    expect(frame.learned.map(({ spool, from }) => [spool, from])).toEqual([
      ['pla', 1],
      ['tpu-95a', 1],
    ])
  })

  it('is the same frame in ledger, limits and range once the whole aircraft was weighed', () => {
    const items = [typedItem('pack', 185), typedItem('motor', 30, { quantity: 4 })]
    const calculatedG = 60 + 185 + 120
    const whole = { id: 'w', of: 'all-up', scaleG: 385, tareG: 0, stepG: 0.1 } as const
    const wholes = [{ ...whole, date: '2026-11-26', calculatedG, trusted: false }]
    const frame = weighFrame(PARTS, { ...bareFrame({ items, limitG: 400 }), wholes })
    expect(frame.readings.map(({ fate }) => fate)).toEqual(['heard'])
    // 1 % of what flies may be on no list.
    expect(frame.allUpG.mid).toBeGreaterThan(380)
    expect(frame.ledger.basicMassG).toBeCloseTo(frame.allUpG.mid, 9)
    expect(frame.printed.massG.mid + frame.ledger.bought.massG).toBeCloseTo(frame.allUpG.mid, 9)
    expect(frame.limits.strictest?.leftG).toBeCloseTo(400 - frame.allUpG.mid, 9)
    // The pack is typed, to some 10 %: it takes most of what is too much, the motors less.
    const [pack, motor] = frame.doubt.countedItems
    expect(pack!.massG / 185).toBeGreaterThan(motor!.massG / 30)
    expect(motor!.massG).toBeGreaterThan(30)
  })

  it('carries the ratio of a weighing over a change, less surely', () => {
    const arm = printedPart('arm', 8, 1, { scaleG: 8.8 })
    const { weighIn } = arm.part
    const then = { ...weighIn!, calculatedG: 8 }
    const denser = { ...arm.part, weighIn: then, recipe: { ...arm.part.recipe, walls: 5 } }
    const changed = printedPart('arm', 12, 1)
    const [row] = weighFrame([{ ...changed, part: denser }], bareFrame()).rows
    expect(row!.massFrom).toBe('weighed before')
    expect(row!.pieceG.mid).toBeCloseTo(12 * 1.1, 9)
    const [fresh] = weighFrame([arm], bareFrame()).rows
    const reach = ({ low, mid, high }: { low: number; mid: number; high: number }) =>
      (high - low) / mid
    expect(reach(row!.pieceG)).toBeGreaterThan(1.5 * reach(fresh!.pieceG))
  })

  it('names a weighing that nothing explains and bends nothing else by it', () => {
    const odd = weighFrame([PARTS[0]!, printedPart('deck', 28, 1, { scaleG: 50 })], bareFrame())
    expect(odd.strays).toMatchObject([{ id: 'deck', value: 50 }])
    expect(odd.strays[0]!.foretold.high).toBeLessThan(34)
    expect(odd.rows[0]!.pieceG.mid).toBeCloseTo(8, 2)
    expect(odd.rows[1]!.pieceG.mid).toBeCloseTo(50, 9)
    expect(odd.learned).toEqual([])
  })

  it('names the limit up to which a weighing is taken without asking, and keeps to it', () => {
    const strayAt = (scaleG: number) =>
      weighFrame([PARTS[0]!, printedPart('deck', 28, 1, { scaleG })], bareFrame()).strays[0]
    const far = strayAt(60)
    if (far === undefined) throw new Error('60 g for 28 g must be asked about')
    const { foretold, taken } = far
    expect(taken.high).toBeGreaterThan(foretold.high)
    expect(taken.low).toBeLessThan(foretold.low)
    // The scale's own noise grows a little with what it says, so just inside and well outside.
    expect(strayAt(taken.high - 0.5)).toBeUndefined()
    expect(strayAt(taken.high + 0.5)).toBeDefined()
    expect(strayAt(taken.low + 0.5)).toBeUndefined()
    expect(strayAt(taken.low - 0.5)).toBeDefined()
  })

  it('takes no lesson from the whole frame while a part weighs what nothing explains', () => {
    const wholes = [
      { id: 'w', of: 'printed', scaleG: 36, tareG: 0, stepG: 0.1, date: '2026-11-26' } as const,
    ].map((whole) => ({ ...whole, calculatedG: 36, trusted: false }))
    const parts = [printedPart('deck', 28, 1, { scaleG: 84 }), printedPart('arm', 8, 1)]
    const frame = weighFrame(parts, { ...bareFrame(), wholes })
    const [deck, arm] = frame.rows
    expect(deck!.pieceG.mid).toBeCloseTo(84, 9)
    expect(arm!.pieceG.mid).toBeCloseTo(8, 2)
    expect(frame.printed.massG.mid).toBeCloseTo(deck!.pieceG.mid + arm!.pieceG.mid, 9)
  })

  it('says of every reading what came of it', () => {
    const whole = (id: string, of: 'printed' | 'all-up', scaleG: number) => {
      const rest = { tareG: 1, stepG: 0.1, date: null, calculatedG: 60, trusted: false }
      return { id, of, scaleG, ...rest }
    }
    const clock = (id: string, pieces: Record<string, number>, timeS: number) => {
      return { id, pieces, timeS, calculatedS: 6720, date: null, trusted: false }
    }
    const parts = [printedPart('arm', 8, 4), printedPart('deck', 28, 1, { scaleG: 29.4 })]
    const frame = {
      ...bareFrame(),
      wholes: [whole('w', 'printed', 64), whole('off', 'printed', 200)],
      clocks: [clock('c', { deck: 1 }, 7392), clock('gone', { leg: 2 }, 100)],
    }
    const { readings, learned } = weighFrame(parts, frame)
    expect(readings.map(({ id, kind, fate }) => [id, kind, fate])).toEqual([
      ['deck', 'pieces', 'heard'],
      ['w', 'printed', 'heard'],
      ['off', 'printed', 'set aside'],
      ['c', 'clock', 'heard'],
      ['gone', 'clock', 'part gone'],
    ])
    expect(readings[0]).toMatchObject({ name: 'deck', pieces: 1, value: 29.4 })
    expect(readings[1]!.value).toBe(63)
    expect(readings[1]!.ratio).toBeCloseTo(63 / 60, 9)
    expect(readings[3]!.ratio).toBeCloseTo(1.1, 9)
    // The one piece and the whole; what was set aside does not count.
    expect(learned).toMatchObject([{ spool: 'pla', from: 2 }])
    const odd = [parts[0]!, printedPart('deck', 28, 1, { scaleG: 84 })]
    const told = weighFrame(odd, { ...frame, clocks: [] }).readings
    expect(told.map(({ fate }) => fate)).toEqual(['set aside', 'part at odds', 'part at odds'])
    const failed = { ...printedPart('gone', 5, 1), figures: null, failed: true }
    const waiting = weighFrame([...parts, failed], { ...frame, clocks: [] }).readings
    expect(waiting.map(({ fate }) => fate)).toEqual(['heard', 'waits', 'waits'])
  })

  it('of no parts, or of parts with no pieces, is zero without dividing by it', () => {
    const none = weighFrame([], bareFrame({}, { massG: 0, price: 0 }))
    expect(none.printed.massG).toEqual({ low: 0, mid: 0, high: 0 })
    expect(none.carbon?.massShare).toBeNull()
  })

  it('leaves out by name what has no figures', () => {
    const failed = { ...printedPart('gone', 5, 1), figures: null, failed: true }
    expect(weighFrame([failed], bareFrame()).leftOut).toEqual([
      { id: 'gone', name: 'gone', why: 'failed', weighed: false },
    ])
  })

  it.each([
    ['failed', true],
    ['not counted yet', false],
  ] as const)('counts a weighed part that is %s by the scale, in mass only', (why, failed) => {
    const part = { ...printedPart('gone', 5, 2, { scaleG: 5.5, spares: 1 }), figures: null, failed }
    const carbon = { massG: 50, price: 30 }
    const without = weighFrame(PARTS, bareFrame({}, carbon))
    const frame = weighFrame([...PARTS, part], bareFrame({}, carbon))
    expect(frame.leftOut).toEqual([{ id: 'gone', name: 'gone', why, weighed: true }])
    expect(frame.printed.massG.mid).toBeCloseTo(without.printed.massG.mid + 2 * 5.5, 9)
    expect(frame.withSpares.massG.mid).toBeCloseTo(without.withSpares.massG.mid + 3 * 5.5, 9)
    expect(frame.allUpG.mid).toBeCloseTo(frame.ledger.basicMassG, 9)
    expect(frame.carbon!.massG.mid).toBeCloseTo(without.carbon!.massG.mid + 11, 9)
    // Cost, hours and filament are those of the others, ranges too.
    expect(frame.withSpares.cost).toEqual(without.withSpares.cost)
    expect(frame.withSpares.timeS).toEqual(without.withSpares.timeS)
    expect(frame.withSpares.filamentM).toBe(without.withSpares.filamentM)
    expect(frame.carbon!.cost).toEqual(without.carbon!.cost)
    expect(frame.pieces).toEqual({ flying: 7, spares: 3 })
    const row = frame.rows.at(-1)!
    expect(row).toMatchObject({ massFrom: 'weighed', figures: null, scaleRatio: null })
    // A scale of tenths, and how far pieces of one part differ.
    expect(row.pieceG.mid).toBe(5.5)
    expect(row.pieceG.high - 5.5).toBeGreaterThan(0.02)
    expect(row.pieceG.high - 5.5).toBeLessThan(0.15)
    expect(frame.ledger.lines.at(-1)).toMatchObject({ status: 'weighed', massG: 5.5, costEach: 0 })
    // It teaches nothing, as nobody knows what was calculated.
    expect(frame.readings).toMatchObject([{ id: 'gone', fate: 'alone' }])
    expect(frame.learned).toEqual([])
    expect(frame.rows[0]!.pieceG).toEqual(without.rows[0]!.pieceG)
  })

  it('leaves a part without figures out when its weighing is of the piece before a change', () => {
    const weighed = printedPart('gone', 5, 2, { scaleG: 5.5 })
    const recipe = { ...weighed.part.recipe, walls: 7 }
    const part = { ...weighed, part: { ...weighed.part, recipe }, figures: null, failed: true }
    const frame = weighFrame([...PARTS, part], bareFrame())
    expect(frame.leftOut).toMatchObject([{ id: 'gone', weighed: false }])
    expect(frame.printed.massG.mid).toBeCloseTo(60, 9)
    expect(frame.readings).toMatchObject([{ id: 'gone', fate: 'waits' }])
  })

  it('hears the whole on the scale while all that has no figures was weighed', () => {
    const part = { ...printedPart('gone', 5, 1, { scaleG: 5 }), figures: null, failed: true }
    const whole = { id: 'w', of: 'printed', scaleG: 68, tareG: 0, stepG: 0.1, date: null } as const
    const wholes = [{ ...whole, calculatedG: 65, trusted: false }]
    const frame = weighFrame([...PARTS, part], { ...bareFrame(), wholes })
    expect(frame.readings.at(-1)).toMatchObject({ id: 'w', fate: 'heard' })
    expect(frame.rows[0]!.pieceG.mid).toBeGreaterThan(8.2)
    expect(frame.rows.at(-1)!.pieceG.mid).toBeCloseTo(5, 1)
  })

  // Common practice, no source: 178 g printed against 122 g of carbon is 56 g and 46 % more.
  it('sets a printed frame of 178 g against a carbon one of 122 g: 56 g, 46 %', () => {
    const frame = [printedPart('frame', 178, 1, { spares: 1 })]
    const { carbon, printed } = weighFrame(frame, bareFrame({}, { massG: 122, price: 30 }))
    expect(carbon!.massG.mid).toBeCloseTo(56, 9)
    expect(Math.round(100 * carbon!.massShare!.mid)).toBe(46)
    // Like for like: the spare is not set against the bought frame.
    expect(carbon!.cost.mid).toBeCloseTo(printed.cost.mid - 30, 9)
  })
})
