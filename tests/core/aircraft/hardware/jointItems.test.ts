import { describe, expect, it } from 'vitest'
import { balanceReport } from '../../../../src/core/aircraft/report/balanceReport.ts'
import { withJointItems } from '../../../../src/core/aircraft/hardware/jointItems.ts'
import type { Item, Place } from '../../../../src/core/model/aircraft.ts'
import type { BoreMark, Joint, JointEnd, JointFastener } from '../../../../src/core/model/joints.ts'
import type { Vec3 } from '../../../../src/core/model/mesh.ts'
import { box } from '../../../support/meshes.ts'
import { plainBore, plainJoint, plateEnd } from '../../../support/plainJoints.ts'
import { reportFrame, reportPart } from '../../../support/reportFrame.ts'

// Lengths and masses: DIN 912 / ISO 4762 weight chart,
// fullerkr.com/collections/din-912-weight-chart: M3 × 8 0.8, × 10 0.9, × 12 1.0 g. Locknut M3 0.5
// g, DIN 985:1987 as quoted by fasten.it. Round post of 5 mm: 0.0378 g/mm, computed from shape
// (check-values/hardware.md 1.7).

/** Two plates of 40 × 20, holes at x 10 and 30, y 10. */
const LOW = reportPart('low', box(40, 20, 4))
const HIGH = reportPart('high', box(40, 20, 2))
const end = (
  partId: string,
  thickMm: number,
  side: 1 | -1,
  more: Partial<BoreMark> = {},
): JointEnd => {
  const bore = (x: number) => plainBore([x, 10, thickMm / 2], { depthMm: thickMm, ...more })
  return plateEnd(partId, [10, 30].map(bore), side, { thickMm })
}
const joint = (fastener: JointFastener | null, gapMm = 0): Joint =>
  plainJoint('j', end('low', 4, 1), end('high', 2, -1), { gapMm, fastener })
const HOME: Place = { partId: 'low', positionMm: [0, 0, 0], rotateDeg: [0, 0, 0], mirrored: false }
const frameOf = (joints: readonly Joint[], places: readonly Place[] = [HOME]) =>
  reportFrame([LOW, HIGH], { joints, places })
const linesOf = (joints: readonly Joint[]): readonly Item[] => withJointItems(frameOf(joints)).items
const briefly = (items: readonly Item[]) =>
  items.map(({ name, quantity }) => `${quantity} × ${name}`)

describe('withJointItems', () => {
  it('lists screw and locknut once each, counted, with their masses and where they sit', () => {
    // 4 + 2 = 6; nut 4.0 and two pitches of 0.5: 11 mm.
    const items = linesOf([joint({ thread: 'M3', end: 'nut' })])
    expect(briefly(items)).toEqual([
      '2 × Screw M3 × 12, socket head, steel (ISO 4762)',
      '2 × Locknut M3, steel (ISO 7040)',
    ])
    expect(items.map(({ massG, status }) => [massG, status])).toEqual([
      [1, 'calculated'],
      [0.5, 'calculated'],
    ])
    // Half-way between the middles of the bores, 2 and 5 mm up; the nut at the bore it lies on.
    expect(items[0]?.sitesMm?.map(rounded)).toEqual([
      [10, 10, 3.5],
      [30, 10, 3.5],
    ])
    expect(rounded(items[1]?.positionMm ?? [0, 0, 0])).toEqual([20, 10, 5])
    expect(items.every(({ costEach }) => costEach > 0)).toBe(true)
  })

  it('stands a post in the gap with a screw at each end, none of which reaches its middle', () => {
    // 4 and one diameter of 3: 7 mm, up to 4 + 11; the thinner plate takes the same.
    const items = linesOf([joint({ thread: 'M3', end: 'post' }, 22)])
    expect(briefly(items)).toEqual([
      '4 × Screw M3 × 8, socket head, steel (ISO 4762)',
      '2 × Standoff M3 × 22, round, aluminium',
    ])
    expect(items[1]?.massG).toBeCloseTo(22 * 0.0378, 2)
    expect(rounded(items[1]?.sitesMm?.[0] ?? [0, 0, 0])).toEqual([10, 10, 14.5])
    expect(items[0]?.sitesMm?.map(([, , z]) => Math.round(10 * z) / 10)).toEqual([2, 27, 2, 27])
  })

  it('puts washers under heads where that brings a stocked length between bite and bottom', () => {
    // Blind seat of 4 under 2 mm: M3 has to be 5 (2 + 3) to 6 long, M3 × 5 does; under 4.5 it is
    // 7.5 to 8.2.
    const blind = (topMm: number, deepMm: number): Joint => ({
      ...joint({ thread: 'M3', end: 'insert' }),
      a: end('low', deepMm, 1, { diameterMm: 4, openLow: false }),
      b: end('high', topMm, -1),
    })
    // 5.5 over a seat 3.4 deep: 8.5 to 8.9. One washer of 0.5 makes it 9 to 9.4, two 9.5 to 9.9,
    // three 10 to 10.4.
    expect(briefly(linesOf([blind(5.5, 3.4)]))).toEqual([
      '2 × Screw M3 × 10, socket head, steel (ISO 4762)',
      '6 × Washer M3, steel (ISO 7089)',
      '2 × Heat-set insert M3 × 4, brass',
    ])
    expect(briefly(linesOf([blind(4, 8)]))).toEqual([
      '2 × Screw M3 × 8, socket head, steel (ISO 4762)',
      '2 × Heat-set insert M3 × 5.7, brass',
    ])
  })

  it('takes them away with the joint, and keeps the very aircraft without one', () => {
    const bare = frameOf([])
    expect(withJointItems(bare)).toBe(bare.aircraft)
    const glued = frameOf([joint(null)])
    expect(withJointItems(glued)).toBe(glued.aircraft)
    const bolted = frameOf([joint({ thread: 'M3', end: 'nut' })])
    expect(withJointItems(bolted)).toBe(withJointItems(bolted))
    // How a part is printed moves no screw.
    const thinner = bolted.parts.map((part) => ({ ...part, recipe: { ...part.recipe, walls: 7 } }))
    expect(withJointItems({ ...bolted, parts: thinner })).toBe(withJointItems(bolted))
    const gone = bolted.parts.map((part) => ({ ...part, quantity: part.id === 'high' ? 0 : 1 }))
    expect(withJointItems({ ...bolted, parts: gone }).items).toEqual([])
  })

  it('adds screws of several joints to one line, and asks no price in a currency without a usual one', () => {
    const twice = [
      joint({ thread: 'M3', end: 'nut' }),
      { ...joint({ thread: 'M3', end: 'nut' }), id: 'k' },
    ]
    expect(briefly(linesOf(twice))[0]).toBe('4 × Screw M3 × 12, socket head, steel (ISO 4762)')
    const frame = frameOf(twice)
    const prices = { ...frame.prices, currency: 'XAU' }
    expect(withJointItems({ ...frame, prices }).items.map(({ costEach }) => costEach)).toEqual([
      0, 0,
    ])
  })

  it('weighs in the balance where it sits: centre and spread by closed sums', () => {
    const frame = frameOf([joint({ thread: 'M3', end: 'post' }, 22)])
    const bolted = balanceOf(frame.aircraft.joints, withJointItems(frame).items)
    const without = balanceOf(frame.aircraft.joints, [])
    // Screws 0.8 g at z 2 and 27, posts of 22 × 0.0378 g at 14.5: all about (20, 10).
    const postG = withJointItems(frame).items[1]?.massG ?? 0
    const addedG = 4 * 0.8 + 2 * postG
    expect(bolted.massG - without.massG).toBeCloseTo(addedG, 9)
    const z = (without.massG * without.cgMm[2] + addedG * 14.5) / bolted.massG
    expect(bolted.cgMm[2]).toBeCloseTo(z, 9)
    // Yaw: 10 mm to either side of the middle; g mm² are 1e-9 kg m².
    const yaw = (bolted.inertiaKgM2[2] - without.inertiaKgM2[2]) * 1e9
    expect(yaw).toBeCloseTo(addedG * 100, 6)
    expect(bolted.unplacedG).toBe(0)
  })

  it('leaves out of the balance what hangs in the air, and says how heavy it is', () => {
    const frame = frameOf([joint({ thread: 'M3', end: 'nut' })], [{ ...HOME, partId: 'other' }])
    const { items } = withJointItems(frame)
    expect(items.map(({ positionMm }) => positionMm)).toEqual([null, null])
  })
})

const rounded = ([x, y, z]: Vec3): Vec3 =>
  [x, y, z].map((mm) => Math.round(1e6 * mm) / 1e6 + 0) as never

function balanceOf(joints: readonly Joint[], items: readonly Item[]) {
  const frame = frameOf(joints)
  const parts = [LOW, HIGH].map((one) => ({
    ...one,
    pieceG: { low: 1, mid: 1, high: 1 },
    massFrom: 'calculated',
  }))
  const found = balanceReport(parts as never, { ...frame.aircraft, items }, items)
  if (found === null) throw new Error('no balance')
  return found
}
