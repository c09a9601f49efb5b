import { expect, it } from 'vitest'
import { gripStack } from '../../../../src/core/aircraft/hardware/gripStack.ts'
import { jointHardware } from '../../../../src/core/aircraft/hardware/jointHardware.ts'
import { STAY, type RigidMap } from '../../../../src/core/mesh/rigidMaps.ts'
import type { BoreMark, Joint, JointEnd } from '../../../../src/core/model/joints.ts'

const bore = (depthMm: number, more: Partial<BoreMark> = {}): BoreMark => ({
  kind: 'bore',
  centreMm: [0, 0, depthMm / 2],
  axis: [0, 0, 1],
  diameterMm: 3.2,
  depthMm,
  openLow: true,
  openHigh: true,
  ...more,
})
const end = (partId: string, mark: BoreMark, side: 1 | -1): JointEnd => ({
  partId,
  piece: 0,
  bores: [mark],
  face: { pointMm: [0, 0, side === 1 ? mark.depthMm : 0], normal: [0, 0, side] },
})
const at = (z: number): RigidMap => ({ ...STAY, move: [0, 0, z] })

it('lays out plates, gap and nut from under the head, in the order they stand', () => {
  // A plate of 4 mm, a ring of 2, a plate of 3 above it.
  const joint: Joint = {
    id: 'j',
    a: end('low', bore(4), 1),
    b: end('high', bore(3), -1),
    kind: 'bores',
    mirrored: false,
    turnDeg: 0,
    slideMm: 0,
    gapMm: 2,
    fastener: { thread: 'M3', end: 'nut' },
  }
  const [hardware] = jointHardware([joint])
  const motions = new Map([
    ['0 low', at(0)],
    ['0 high', at(6)],
  ])
  const stack = gripStack({ ...hardware!, joint }, motions)!
  // 4 + 2 + 3, a locknut of 4 (ISO 7040) and two pitches of 0.5: 14, stocked 16.
  expect(stack.lengthMm).toBe(16)
  expect(
    stack.layers.map(({ kind, at: piece, fromMm, toMm }) => [kind, piece?.partId, fromMm, toMm]),
  ).toEqual([
    ['piece', 'low', 0, 4],
    ['gap', undefined, 4, 6],
    ['piece', 'high', 6, 9],
    ['nut', undefined, 9, 13],
  ])
  // Of pieces without a place nothing is laid out.
  expect(gripStack({ ...hardware!, joint }, new Map())).toBeNull()
})

it('ends in what the screw bites in', () => {
  const blind = bore(8, { diameterMm: 4, openLow: false, centreMm: [0, 0, 6] })
  const joint: Joint = {
    id: 'j',
    a: end('lid', bore(4), -1),
    b: { ...end('base', blind, 1), face: { pointMm: [0, 0, 10], normal: [0, 0, 1] } },
    kind: 'bores',
    mirrored: false,
    turnDeg: 0,
    slideMm: 0,
    gapMm: 0,
    fastener: { thread: 'M3', end: 'insert' },
  }
  const [hardware] = jointHardware([joint])
  const motions = new Map([
    ['0 lid', at(10)],
    ['0 base', at(0)],
  ])
  const { layers, lengthMm } = gripStack({ ...hardware!, joint }, motions)!
  expect(layers.map(({ kind, fromMm, toMm }) => [kind, fromMm, toMm])).toEqual([
    ['piece', 0, 4],
    ['bitten', 4, 12],
  ])
  // One diameter of thread in the insert: 7 mm, stocked 8.
  expect(lengthMm).toBe(8)
})
