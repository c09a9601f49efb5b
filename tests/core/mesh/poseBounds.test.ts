import { expect, test } from 'vitest'
import { FACE_POSES, placeMesh } from '../../../src/core/mesh/pose.ts'
import { isQuarterTurn, poseBounds } from '../../../src/core/mesh/poseBounds.ts'
import { box } from '../../support/meshes.ts'

const BOUNDS = { min: [-10, 5, 2], max: [40, 15, 32] } as const
const sizeOf = ({ min, max }: { min: readonly number[]; max: readonly number[] }) =>
  max.map((value, k) => value - (min[k] ?? NaN))

test('turns the box of a part with it', () => {
  for (const { pose } of FACE_POSES) {
    const mesh = placeMesh(box(50, 10, 30), 1, pose)
    const of = (k: number) => [...mesh.positions].filter((_, i) => i % 3 === k)
    const expected = [0, 1, 2].map((k) => Math.max(...of(k)) - Math.min(...of(k)))
    expect(sizeOf(poseBounds(BOUNDS, pose))).toEqual(expected)
    expect(isQuarterTurn(pose)).toBe(true)
  }
})

test('takes the box round the turned box for any other angle', () => {
  const pose = { rotateDeg: [0, 0, 45] } as const
  const [x, y, z] = sizeOf(poseBounds(BOUNDS, pose))
  expect(x).toBeCloseTo(60 * Math.SQRT1_2, 9)
  expect(y).toBeCloseTo(60 * Math.SQRT1_2, 9)
  expect(z).toBe(30)
  expect(isQuarterTurn(pose)).toBe(false)
})
