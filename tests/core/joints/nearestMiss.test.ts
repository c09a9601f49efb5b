import { expect, test } from 'vitest'
import type { JoinablePart } from '../../../src/core/joints/equalPatterns.ts'
import { nearestMiss } from '../../../src/core/joints/nearestMiss.ts'
import { shapeOf } from '../../../src/core/joints/shapeOf.ts'
import { boredPlate, straight } from '../../support/boredPlate.ts'
import { rectangle } from '../../support/meshes.ts'
import type { Point } from '../../support/polygon.ts'

function plate(spots: readonly Point[], diameter = 3.2): JoinablePart {
  const mesh = boredPlate(
    rectangle(60, 60),
    3,
    spots.map(([x, y]) => straight(x, y, diameter / 2, 3, 32)),
  )
  const { mouths, faces } = shapeOf(mesh)
  return { mouths, faces, centresMm: [] }
}
const square = (side: number): readonly Point[] =>
  [
    [-1, -1],
    [1, -1],
    [1, 1],
    [-1, 1],
  ].map(([x, y]): Point => [30 + (x! * side) / 2, 30 + (y! * side) / 2])

test('four holes at 30.5 against four at 30 are half a millimetre off', () => {
  const miss = nearestMiss(plate(square(30.5)), [
    { partId: 'far', part: plate(square(20)) },
    { partId: 'near', part: plate(square(30)) },
  ])
  expect(miss).toMatchObject({ partId: 'near', holes: 4 })
  expect(miss!.apartMm).toBeCloseTo(30.5, 2)
  expect(miss!.otherMm).toBeCloseTo(30, 2)
  expect(miss!.offMm).toBeCloseTo(0.5, 2)
  expect(miss!.diameterMm).toBeCloseTo(3.2, 2)
})

test('of other counts two holes are held against two; what meets or is far off is no near miss', () => {
  const two: readonly Point[] = [
    [10, 30],
    [22, 30],
  ]
  const other: readonly Point[] = [
    [10, 30],
    [20.98, 30],
  ]
  const on = (spots: readonly Point[], diameter?: number) => [
    { partId: 'p', part: plate(spots, diameter) },
  ]
  expect(nearestMiss(plate(two), on(other))?.offMm).toBeCloseTo(1.02, 2)
  expect(nearestMiss(plate(two), on(two))).toBeNull()
  expect(nearestMiss(plate(two), on(square(40)))).toBeNull()
  // Not for one screw: 3.2 mm passes M3, 8 mm passes nothing that fits it.
  expect(nearestMiss(plate(two), on(other, 8))).toBeNull()
})
