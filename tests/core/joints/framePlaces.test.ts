import { expect, test } from 'vitest'
import type { Place } from '../../../src/core/model/aircraft.ts'
import type { JointEnd } from '../../../src/core/model/joints.ts'
import type { Vec3 } from '../../../src/core/model/mesh.ts'
import { framePlaces } from '../../../src/core/joints/framePlaces.ts'
import { plainBore, plainJoint, plateEnd } from '../../support/plainJoints.ts'

const part = (id: string) => ({ id, unit: 'millimetre', quantity: 1 }) as const

/** Two holes at x in a plate of 4 mm, seen from its upper (1) or lower (−1) face. */
const endOf = (partId: string, x: number, side: 1 | -1): JointEnd =>
  plateEnd(partId, [plainBore([x, 0, 2]), plainBore([x, 20, 2])], side)

const JOINT = plainJoint('one', endOf('low', 50, 1), endOf('high', 10, -1), { gapMm: 1 })
const placeAt = (positionMm: Vec3): Place => ({
  partId: 'low',
  positionMm,
  rotateDeg: [0, 0, 0],
  mirrored: false,
})

test('a piece hangs on the one that is placed, and moves with it', () => {
  const parts = [part('low'), part('high')]
  const joints = [JOINT]
  const at = (places: readonly Place[]) =>
    framePlaces(parts, { places, joints, items: [] }).places.map(({ partId, positionMm }) => [
      partId,
      ...positionMm.map((mm) => Math.round(1e6 * mm) / 1e6 + 0),
    ])
  // Holes at 50 and at 10, faces 1 mm apart on a plate of 4.
  expect(at([placeAt([0, 0, 0])])).toEqual([
    ['low', 0, 0, 0],
    ['high', 40, 0, 5],
  ])
  expect(at([placeAt([100, 0, 7])])[1]).toEqual(['high', 140, 0, 12])
})

test('of pieces that hang together, the one that was placed keeps its very place', () => {
  const typed = { ...placeAt([1, 2, 3]), rotateDeg: [0, 0, -90] as const }
  const { places } = framePlaces([part('low'), part('high')], {
    places: [typed],
    joints: [JOINT],
    items: [],
  })
  expect(places[0]).toBe(typed)
  expect(places).toHaveLength(2)
})

test('gives the same object until something it rests on changes', () => {
  const aircraft = { places: [placeAt([0, 0, 0])], joints: [JOINT], items: [] }
  const first = framePlaces([part('low'), part('high')], aircraft)
  expect(framePlaces([part('low'), part('high')], aircraft)).toBe(first)
  expect(framePlaces([{ ...part('low'), quantity: 2 }, part('high')], aircraft)).not.toBe(first)
})

test('without joints places are as typed', () => {
  const places = [placeAt([1, 2, 3])]
  expect(framePlaces([part('low')], { places, joints: [], items: [] }).places).toBe(places)
})
