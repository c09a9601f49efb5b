import { describe, expect, it } from 'vitest'
import { screwsOf } from '../../../../src/core/aircraft/hardware/jointHardware.ts'
import type { BoreMark, Joint, JointEnd, JointFastener } from '../../../../src/core/model/joints.ts'
import { plainBore, plainJoint } from '../../../support/plainJoints.ts'

// Lengths of the DIN 912 / ISO 4762 weight chart, fullerkr.com/collections/din-912-weight-chart: M2
// 3, 4, 5, 6, 8, 10 …; M3 5, 6, 8, 10, 12, 16, 20, 25, 30 mm. Nut heights: M3 locknut 4.0 mm, DIN
// 985:1987 as quoted by fasten.it; M2 1.6 mm, BS EN ISO 4032:2001 table 1. Two threads past a nut
// and one diameter in an insert: common practice, no source. Two diameters in plastic: Lincoln,
// Gomes, Braden, doi 10.1201/9780203747889-6.

const bore = (depthMm: number, more: Partial<BoreMark> = {}): BoreMark =>
  plainBore([0, 0, depthMm / 2], { depthMm, ...more })
const end = (partId: string, ...bores: readonly BoreMark[]): JointEnd => ({
  partId,
  piece: 0,
  bores,
  face: { pointMm: [0, 0, 0], normal: [0, 0, 1] },
})
const joint = (
  a: JointEnd,
  b: JointEnd,
  fastener: JointFastener | null,
  more: Partial<Joint> = {},
): Joint => plainJoint(`${a.partId}-${b.partId}`, a, b, { fastener, ...more })

const NUT = { thread: 'M3', end: 'nut' } as const
const INSERT = { thread: 'M3', end: 'insert' } as const
const TAPPED = { thread: 'M3', end: 'tapped' } as const
const THROUGH = { thread: 'M3', end: 'through' } as const
const blind = { openHigh: false }

const only = (...joints: readonly Joint[]) => screwsOf(joints)[0]

describe('screwsOf one joint', () => {
  it('crosses both parts and the gap to a locknut', () => {
    // 2 + 4 + gap 1 = 7; DIN 985 h 4.0 and two pitches of 0.5: 12 mm.
    const made = joint(end('plate', bore(2), bore(2)), end('arm', bore(4), bore(4)), NUT, {
      gapMm: 1,
    })
    expect(only(made)).toEqual({
      jointId: 'plate-arm',
      holes: 2,
      gripMm: 7,
      screw: 'M3 × 12',
      count: 2,
      warnings: [],
    })
  })

  it('takes a plain nut where no locknut is made', () => {
    // 3 + 2.4 = 5.4; ISO 4032 m 1.6 and two pitches of 0.4: 7.8 mm.
    const made = joint(end('deck', bore(3)), end('mast', bore(2.4)), { thread: 'M2', end: 'nut' })
    expect(only(made)).toMatchObject({ gripMm: 5.4, screw: 'M2 × 8', count: 1 })
  })

  it('crosses only what lies over an insert, and stays off the bottom of its hole', () => {
    const seat = bore(8, { diameterMm: 4, ...blind })
    // 4 and one diameter: 7 mm or more, 12 or less.
    expect(only(joint(end('plate', bore(4)), end('arm', seat), INSERT))).toMatchObject({
      gripMm: 4,
      screw: 'M3 × 8',
      warnings: [],
    })
    // The same the other way round: the blind bore is bitten.
    expect(only(joint(end('arm', seat), end('plate', bore(4)), INSERT))).toMatchObject({
      gripMm: 4,
      screw: 'M3 × 8',
    })
  })

  it('cuts into the narrower of two open bores, and sets an insert into the one that is made for it', () => {
    const pilot = bore(10, { diameterMm: 2.5 })
    // 2 and two diameters: 8 mm.
    expect(only(joint(end('arm', pilot), end('lid', bore(2)), TAPPED))).toMatchObject({
      gripMm: 2,
      screw: 'M3 × 8',
    })
    const seat = bore(10, { diameterMm: 4 })
    expect(only(joint(end('arm', seat), end('lid', bore(2)), INSERT))?.gripMm).toBe(2)
    expect(only(joint(end('lid', bore(2)), end('arm', seat), INSERT))?.gripMm).toBe(2)
  })

  it('does not ask for a longer screw because of the last decimals of a mesh', () => {
    // 3 + 4 + 4.0 + 1 = 12 mm.
    const made = joint(end('plate', bore(3.000001)), end('arm', bore(4.000004)), NUT)
    expect(only(made)).toMatchObject({ gripMm: 7, screw: 'M3 × 12' })
  })

  it('reaches the least bite in a bore that is just deep enough, whatever floats say', () => {
    // 5.8 and two diameters of M2: 9.8 mm or more, and the bottom is there.
    const cup = bore(3.8, { diameterMm: 2.4 })
    const bracket = bore(4.2, { diameterMm: 1.7, ...blind })
    const made = joint(
      end('bracket', bracket),
      end('cup', cup),
      { thread: 'M2', end: 'tapped' },
      { gapMm: 2 },
    )
    expect(only(made)).toMatchObject({ gripMm: 5.8, screw: 'M2 × 10' })
  })

  it('takes one screw for holes of unequal depth, or says that none does', () => {
    const made = (depthMm: number) =>
      joint(
        end('plate', bore(2), bore(9)),
        end(
          'arm',
          bore(depthMm, { diameterMm: 2.5, ...blind }),
          bore(20, { diameterMm: 2.5, ...blind }),
        ),
        TAPPED,
      )
    // 9 and 6 of thread: 15 mm or more; 2 + 14.5 before the first bottom.
    expect(only(made(14.5))).toMatchObject({ gripMm: 9, screw: 'M3 × 16', count: 2 })
    expect(only(made(12))).toMatchObject({ gripMm: 9, screw: null, count: 2 })
    expect(only(made(12))?.warnings[0]).toContain('wants 6 mm to bite in, it has 5 mm')
  })

  it('names no screw, but grip, count and reason, where none is stocked or nothing is there to bite', () => {
    const long = only(joint(end('a', bore(20)), end('b', bore(20)), NUT))
    expect(long).toMatchObject({ gripMm: 40, screw: null, count: 1 })
    expect(long?.warnings[0]).toContain('45 mm or more')
    const shallow = only(joint(end('a', bore(2)), end('b', bore(4, { diameterMm: 2.5 })), TAPPED))
    expect(shallow).toMatchObject({ gripMm: 2, screw: null, count: 1 })
    expect(shallow?.warnings[0]).toContain('wants 6 mm to bite in, it has 4 mm')
    const wide = only(joint(end('a', bore(2)), end('b', bore(9)), TAPPED, { gapMm: 22 }))
    expect(wide).toMatchObject({ gripMm: 24, screw: null, count: 1 })
    expect(wide?.warnings[0]).toContain('3.2 mm wide')
  })

  it('counts nothing without a fastener, without bores, or at a peg', () => {
    const glued = joint(end('a', bore(2)), end('b', bore(3)), null, { gapMm: 1 })
    expect(only(glued)).toMatchObject({ holes: 1, gripMm: 6, screw: null, count: 0, warnings: [] })
    const bare = only(joint(end('a'), end('b', bore(3)), NUT))
    expect(bare).toMatchObject({ holes: 0, gripMm: 0, screw: null, count: 0 })
    expect(bare?.warnings).toHaveLength(1)
    const peg = joint(end('a', bore(2, { kind: 'peg' })), end('b', bore(3)), NUT)
    expect(only(peg)).toMatchObject({ holes: 0, count: 0 })
  })
})

describe('screwsOf a column of joints', () => {
  const lid = end('lid', bore(2), bore(2, { centreMm: [20, 0, 1] }))
  const deck = end('deck', bore(4), bore(4, { centreMm: [20, 0, 2] }))
  const over = joint(lid, deck, THROUGH, { gapMm: 1 })

  it('hands screws on to the joint that ends them', () => {
    const arm = end('arm', bore(8, { diameterMm: 4, ...blind }))
    const [through, ended] = screwsOf([over, joint(end('deck', bore(4)), arm, INSERT)])
    // 2 + 1 + 4 = 7 and one diameter: 10 mm; the second hole of the lid has no end.
    expect(ended).toMatchObject({ gripMm: 7, screw: 'M3 × 10', count: 1, warnings: [] })
    expect(through).toMatchObject({ holes: 2, gripMm: 7, screw: null, count: 0 })
    expect(through?.warnings).toEqual([
      '1 of 2 screws end nowhere: no joint with an M3 nut, insert or thread shares the bore.',
    ])
  })

  it('goes through several, and from both sides of a nut joint, whatever the order', () => {
    const cap = joint(end('cap', bore(1)), end('lid', bore(2)), THROUGH)
    const foot = joint(end('arm', bore(3)), end('foot', bore(1)), THROUGH)
    const nut = joint(end('deck', bore(4)), end('arm', bore(3)), NUT)
    // 1 + 2 + 1 + 4 + 3 + 1 = 12, nut 4.0, two pitches: 17 mm.
    for (const order of [
      [cap, over, nut, foot],
      [foot, nut, over, cap],
    ]) {
      const found = screwsOf(order)
      expect(found.map(({ jointId }) => jointId)).toEqual(order.map(({ id }) => id))
      expect(found[order.indexOf(nut)]).toMatchObject({ gripMm: 12, screw: 'M3 × 20', count: 1 })
      expect(found.reduce((sum, { count }) => sum + count, 0)).toBe(1)
    }
  })

  it('takes bores for one only on the same piece, in the same place, with the same thread', () => {
    const grips = (a: JointEnd, fastener: JointFastener = NUT) =>
      screwsOf([over, joint(a, end('arm', bore(3)), fastener)])[1]?.gripMm
    expect(grips(end('deck', bore(4, { centreMm: [0, 0.009, 2] })))).toBe(10)
    expect(grips(end('deck', bore(4, { centreMm: [0, 0.02, 2] })))).toBe(7)
    expect(grips({ ...end('deck', bore(4)), piece: 1 })).toBe(7)
    expect(grips(end('deck', bore(4)), { thread: 'M2.5', end: 'nut' })).toBe(7)
  })
})
