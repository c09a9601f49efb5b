import { describe, expect, it } from 'vitest'
import {
  jointFindings,
  type JoinedPart,
} from '../../../../src/core/aircraft/report/jointFindings.ts'
import { AIRCRAFT_DEFAULTS } from '../../../../src/core/data/aircraft.ts'
import type { Item, Place } from '../../../../src/core/model/aircraft.ts'
import type { BoreMark, Joint, JointEnd } from '../../../../src/core/model/joints.ts'
import type { Vec3 } from '../../../../src/core/model/mesh.ts'
import { box } from '../../../support/meshes.ts'
import { plainBore, plainJoint, plateEnd } from '../../../support/plainJoints.ts'
import { reportPart } from '../../../support/reportFrame.ts'

const bore = (x: number, diameterMm = 3.2, centreZ = 2, depthMm = 4): BoreMark =>
  plainBore([x, 0, centreZ], { diameterMm, depthMm })
const part = (id: string, bores: readonly BoreMark[], quantity = 1): JoinedPart => ({
  part: reportPart(id, box(5, 5, 4), { quantity }).part,
  traits: { bores },
})
const end = (partId: string, side: 1 | -1, marks: readonly BoreMark[], piece = 0): JointEnd =>
  plateEnd(partId, marks, side, { piece })
const at = (partId: string, positionMm: Vec3 = [0, 0, 0]): Place => ({
  partId,
  positionMm,
  rotateDeg: [0, 0, 0],
  mirrored: false,
})
const told = (parts: readonly JoinedPart[], joints: readonly Joint[], places = [at('deck')]) =>
  jointFindings(parts, { ...AIRCRAFT_DEFAULTS, joints, places }).map(
    ({ code, message }) => `${code}: ${message}`,
  )

const PAIR = [bore(0), bore(20)]
const DECK = part('deck', PAIR)
const ARM = part('arm', PAIR)
const BOLTED = plainJoint('j', end('deck', 1, PAIR), end('arm', -1, PAIR))

describe('jointFindings', () => {
  it('says nothing of a frame that is whole, or that has no joint yet', () => {
    expect(told([DECK, ARM], [BOLTED])).toEqual([])
    expect(told([DECK, part('loose', PAIR)], [])).toEqual([])
  })

  it('counts holes for screws that no joint uses, over all pieces and by width', () => {
    const deck = part('deck', [...PAIR, bore(40), bore(60, 2.4)])
    const arms = part('arm', [...PAIR, bore(50)], 2)
    expect(told([deck, arms], [BOLTED], [at('deck'), at('arm'), at('arm', [0, 50, 0])])).toEqual([
      'free-hole: “deck”: holes that no joint uses: 1 of 2.4 mm, 1 of 3.2 mm.',
      // The second arm's two bolts, and a third hole in each.
      'free-hole: “arm”: holes that no joint uses: 4 of 3.2 mm.',
    ])
  })

  it('takes a counterbore and its bore for one hole, and a tube’s bore for none', () => {
    const seat = [bore(0, 4.2, 6.5, 5), bore(20, 4.2, 6.5, 5), bore(70, 12)]
    expect(told([part('deck', [...PAIR, ...seat]), ARM], [BOLTED])).toEqual([])
  })

  it('tells pieces that hang in the air, and joints of pieces that do not fly', () => {
    const arms = part('arm', PAIR, 2)
    expect(told([DECK, arms, part('mast', [])], [BOLTED])).toEqual([
      'hangs: 1 of 2 “arm” hang in the air: no joint and no place leads to them.',
      'hangs: “mast” hangs in the air: no joint and no place leads to it.',
      'free-hole: “arm”: holes that no joint uses: 2 of 3.2 mm.',
    ])
    const third = plainJoint('k', end('deck', -1, PAIR), end('arm', 1, PAIR, 2))
    expect(told([DECK, ARM], [BOLTED, third])[0]).toBe(
      'idle: deck – arm: of “arm” 1 flies, and this is piece 3. It joins nothing.',
    )
  })

  it('names the joint whose hole a changed mesh has not any more', () => {
    const moved = part('arm', [bore(0), bore(20.4)])
    expect(told([DECK, moved], [BOLTED]).slice(0, 1)).toEqual([
      'lost-hole: deck – arm: 1 of 2 holes of “arm” is not where it was on its mesh. Join them anew.',
    ])
    const wider = part('arm', [bore(0), bore(20, 3.4)])
    expect(told([DECK, wider], [BOLTED])[0]).toContain('lost-hole')
    expect(told([DECK, { ...moved, traits: null }], [BOLTED])).toEqual([])
  })

  it('says how far a loop is from closed', () => {
    // A plate over two blocks whose second joint wants it 0.7 mm higher.
    const cap = part('cap', [bore(0), bore(20), bore(40), bore(60)])
    const [first, second] = [PAIR, [bore(40), bore(60)]]
    const joints = [
      plainJoint('one', end('deck', 1, first), end('arm', -1, first)),
      plainJoint('two', end('arm', 1, first), end('cap', -1, first)),
      plainJoint('three', end('deck', 1, second), end('cap', -1, second), { gapMm: 4.7 }),
    ]
    const deck = part('deck', [...PAIR, ...second])
    expect(told([deck, ARM, cap], joints)).toEqual([
      'open-loop: arm – cap: they do not meet, 0.7 mm are left where the joints come round to each other.',
    ])
    // Play of the holes takes up a fifth of a millimetre, here as in the table of joints.
    for (const gapMm of [3.81, 4, 4.19]) {
      const closed = joints.with(2, { ...joints[2]!, gapMm })
      expect(told([deck, ARM, cap], closed), `${gapMm} mm`).toEqual([])
    }
    const open = joints.with(2, { ...joints[2]!, gapMm: 4.21 })
    expect(told([deck, ARM, cap], open)).toHaveLength(1)
  })

  it('tells what is wrong with a screw once for all joints of which it is', () => {
    const shallow = { thread: 'M3', end: 'tapped' } as const
    const two = [
      { ...BOLTED, fastener: shallow },
      plainJoint('k', end('deck', -1, PAIR), end('foot', 1, PAIR), { fastener: shallow }),
    ]
    const [first, ...rest] = told([DECK, ARM, part('foot', PAIR)], two)
    expect(first).toMatch(
      /^screw: deck – arm; deck – foot: No thread to bite in: the bore is 3\.2 mm/,
    )
    expect(rest).toEqual([])
  })

  describe('bought things with a body', () => {
    const thing = (more: Partial<Item>): Item => ({
      id: 'thing',
      name: 'Thing',
      group: 'electronics',
      quantity: 1,
      massG: 8,
      costEach: 0,
      status: 'estimated',
      basis: 'typed',
      positionMm: null,
      ...more,
    })
    const board = (heightMm: number): Item =>
      thing({
        name: 'Board',
        // Its underside so far above the deck, whose top is at 4 mm.
        positionMm: [0, 0, 4 + heightMm + 4],
        body: { kind: 'board', sizeMm: [36, 36, 8], holes: null, shaftMm: 0 },
      })
    const findings = (items: readonly Item[], joints: readonly Joint[]) =>
      jointFindings([DECK, ARM], {
        ...AIRCRAFT_DEFAULTS,
        items,
        joints,
        places: [at('deck')],
      }).map(({ code, message }) => `${code}: ${message}`)

    it('stand in the way of heads below them, until they stand higher than a head', () => {
      // The arm hangs below the deck; ISO 4762: an M3 head is 3 mm high, and lies on the deck's
      // upper side.
      const below = plainJoint('j', end('deck', -1, PAIR), end('arm', 1, PAIR), {
        fastener: { thread: 'M3', end: 'nut' },
      })
      expect(findings([board(2)], [below])).toEqual([
        'in-the-way: deck – arm: 2 heads reach into “Board”: it can short the board.',
      ])
      expect(findings([board(3)], [below])).toEqual([])
      const craft = {
        ...AIRCRAFT_DEFAULTS,
        items: [board(2)],
        joints: [below],
        places: [at('deck')],
      }
      const found = jointFindings([DECK, ARM], craft)
      const reaching = found.find(({ code }) => code === 'in-the-way')
      // Heads lie on the deck's top, at 4 mm, over its two holes.
      expect(reaching!.atMm).toHaveLength(2)
      for (const [, , z] of reaching!.atMm!) expect(z).toBeCloseTo(4 + 3 / 2, 6)
      // 4 + 4 of plate, a locknut of 4 and a turn: M3 × 16 stands out 4 mm beyond the nut, 12 below
      // the deck's top.
      const low = (upperMm: number): Item =>
        thing({
          name: 'Pack',
          positionMm: [0, 0, upperMm - 5],
          body: { kind: 'pack', sizeMm: [60, 20, 10], holes: null, shaftMm: 0 },
        })
      expect(findings([low(-11)], [below])).toEqual([
        'in-the-way: deck – arm: 2 screw ends reach into “Pack”: it can pierce the pack, which burns.',
      ])
      expect(findings([low(-12)], [below])).toEqual([])
    })

    it('take screws no deeper than their thread, and lose holes as parts do', () => {
      const motor = (depthMm: number, side = 16): Item =>
        thing({
          id: 'motor',
          name: 'Motor',
          body: {
            kind: 'motor',
            sizeMm: [36, 36, 18],
            holes: { layout: 'cross', aMm: side, bMm: side, thread: 'M3', depthMm },
            shaftMm: 5,
          },
        })
      const seat = [bore(-8), bore(8)]
      const own = (depthMm: number): readonly BoreMark[] =>
        [-8, 8].map((x) => ({ ...bore(x, 2.5, depthMm / 2, depthMm), openHigh: false }))
      const held = (depthMm: number) =>
        plainJoint('m', end('deck', 1, seat), end('motor', -1, own(depthMm)), {
          fastener: { thread: 'M3', end: 'tapped' },
        })
      const toldOf = (depthMm: number, side?: number) =>
        jointFindings([part('deck', seat)], {
          ...AIRCRAFT_DEFAULTS,
          items: [motor(depthMm, side)],
          joints: [held(depthMm)],
          places: [at('deck')],
        }).map(({ code, message }) => `${code}: ${message}`)
      // 4 mm of deck and a diameter of thread: 7 mm, M3 × 8 (ISO 4762 lengths).
      expect(toldOf(4)).toEqual([])
      // A washer of 0.5 mm (ISO 7089) takes up what is less deep; of less than a diameter none
      // brings a length there.
      expect(toldOf(3.5)).toEqual([])
      expect(toldOf(2.9)).toEqual([
        'screw: deck – Motor: No stocked M3 length fits: it has to be 6.9–6.9 mm. Put 1.1 mm of washers under ' +
          'the head and take an M3 × 8; without them it can cut the windings.',
      ])
      expect(toldOf(4, 19)[0]).toBe(
        'lost-hole: deck – Motor: 2 of 2 holes of “Motor” are not where it was on its mesh. Join them anew.',
      )
    })
  })
})
