import { describe, expect, it } from 'vitest'
import { framePlaces } from '../../../src/core/joints/framePlaces.ts'
import { wayApart } from '../../../src/core/joints/wayApart.ts'
import type { Joint, JointEnd } from '../../../src/core/model/joints.ts'
import type { Vec3 } from '../../../src/core/model/mesh.ts'
import { plainBores, plainJoint, plateEnd } from '../../support/plainJoints.ts'

const part = (id: string, quantity = 1) => ({ id, unit: 'millimetre', quantity }) as const

/** Of a plate of 4 mm, seen from its upper (1) or lower (−1) face; bores at these x. */
const end = (partId: string, xs: readonly number[], side: 1 | -1, piece = 0): JointEnd =>
  plateEnd(partId, plainBores(xs), side, { piece })
const joint = (a: JointEnd, b: JointEnd): Joint =>
  plainJoint(`${a.partId} ${b.partId} ${b.piece}`, a, b)
const ways = (joints: readonly Joint[], rotateDeg: Vec3 = [0, 0, 0]) => {
  const places = [{ partId: 'deck', positionMm: [5, 6, 7] as const, rotateDeg, mirrored: false }]
  const parts = [part('roof'), part('deck'), part('arm', 2), part('pad'), part('loose')]
  const found = wayApart(joints, framePlaces(parts, { places, joints, items: [] }).motions)
  return Object.fromEntries(
    [...found].map(([key, way]) => [key, way.map((value) => Math.round(1e9 * value) / 1e9 + 0)]),
  )
}

/** Arms below, a roof above and a pad upon it; the deck has most holes joined. */
const STACK = [
  joint(end('deck', [0, 10, 20, 30], 1), end('roof', [0, 10, 20, 30], -1)),
  joint(end('deck', [40, 50], -1), end('arm', [0, 10], 1, 0)),
  joint(end('deck', [-40, -50], -1), end('arm', [0, 10], 1, 1)),
  joint(end('roof', [60, 70], 1), end('pad', [0, 10], -1)),
]

describe('wayApart', () => {
  it('goes out of the face that was touched, a step further with every joint', () => {
    expect(ways(STACK)).toEqual({
      '0 deck': [0, 0, 0],
      '0 roof': [0, 0, 1],
      '0 pad': [0, 0, 2],
      '0 arm': [0, 0, -1],
      '1 arm': [0, 0, -1],
    })
  })

  it('turns with the frame, and does not mind which piece a joint names first', () => {
    const turned = ways(STACK, [0, 90, 0])
    expect(turned['0 pad']).toEqual([2, 0, 0])
    expect(turned['1 arm']).toEqual([-1, 0, 0])
    const swapped = STACK.map((each) => joint(each.b, each.a))
    expect(ways(swapped)).toEqual(ways(STACK))
  })

  it('has none for what nothing leads to', () => {
    expect(ways([])).toEqual({})
    expect(ways(STACK)['0 loose']).toBeUndefined()
  })
})
