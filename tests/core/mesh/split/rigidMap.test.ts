import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { mapPoint } from '../../../../src/core/mesh/rigidMaps.ts'
import { rigidMap } from '../../../../src/core/mesh/split/rigidMap.ts'
import type { Mesh, Vec3 } from '../../../../src/core/model/mesh.ts'
import { box, merge, mirror, prism, rotate, scale, translate } from '../../../support/meshes.ts'

/** A wedge without any symmetry. */
const WEDGE = prism(
  [
    [0, 0],
    [30, 2],
    [12, 17],
  ],
  9,
)

const mapOf = (one: Mesh, other: Mesh) => {
  const triangleCount = one.indices.length / 3
  return rigidMap(
    merge([one, other]),
    { firstTriangle: 0, triangleCount },
    { firstTriangle: triangleCount, triangleCount: other.indices.length / 3 },
  )
}

const angle = fc.double({ min: -360, max: 360, noNaN: true })
const length = fc.double({ min: -200, max: 200, noNaN: true })
const vector = (value: fc.Arbitrary<number>): fc.Arbitrary<Vec3> => fc.tuple(value, value, value)

describe('rigidMap', () => {
  test('finds how a copy was turned, mirrored and moved, to the last digits', () => {
    fc.assert(
      fc.property(vector(angle), vector(length), fc.boolean(), (turn, move, mirrored) => {
        const copy = translate(rotate(mirrored ? mirror(WEDGE) : WEDGE, turn), move)
        const map = mapOf(WEDGE, copy)
        expect(map).not.toBeNull()
        for (let i = 0; i < WEDGE.positions.length; i += 3) {
          const at = (mesh: Mesh): Vec3 => [
            mesh.positions[i]!,
            mesh.positions[i + 1]!,
            mesh.positions[i + 2]!,
          ]
          mapPoint(map!, at(WEDGE)).forEach((value, k) =>
            expect(Math.abs(value - at(copy)[k]!)).toBeLessThan(1e-9),
          )
        }
      }),
      { seed: 31, numRuns: 100 },
    )
  })

  test('takes the placing of a box by the order of its corners, not by its symmetry', () => {
    const map = mapOf(box(20, 20, 20), translate(rotate(box(20, 20, 20), [0, 0, 90]), [50, 0, 0]))
    expect(map?.matrix.map((value) => Math.round(value * 1e9) / 1e9 + 0)).toEqual([
      0, -1, 0, 1, 0, 0, 0, 0, 1,
    ])
  })

  test('lets copies be apart by the rounding of six digits and stays rigid', () => {
    const rounded = {
      ...WEDGE,
      positions: rotate(WEDGE, [0, 0, 33]).positions.map((value) => Number(value.toPrecision(6))),
    }
    const m = mapOf(WEDGE, rounded)?.matrix
    expect(m).toBeDefined()
    expect(Math.hypot(m![0], m![3], m![6])).toBeCloseTo(1, 12)
  })

  test.each([
    ['one a little larger', scale(WEDGE, 1.001)],
    [
      'a sheared one',
      {
        ...WEDGE,
        positions: WEDGE.positions.map((value, i) =>
          i % 3 === 0 ? value + 0.01 * WEDGE.positions[i + 2]! : value,
        ),
      },
    ],
    [
      'another shape of as many triangles',
      prism(
        [
          [0, 0],
          [30, 2],
          [13, 17],
        ],
        9,
      ),
    ],
    ['one of more triangles', box(5, 5, 5)],
  ])('does not take %s for a copy', (_, other) => {
    expect(mapOf(WEDGE, other)).toBeNull()
  })

  test('says nothing of flat and of empty pieces', () => {
    const sheet = {
      positions: Float64Array.of(0, 0, 0, 9, 0, 0, 0, 9, 0),
      indices: Uint32Array.of(0, 1, 2),
    }
    expect(mapOf(sheet, translate(sheet, [5, 0, 0]))).toBeNull()
    expect(
      mapOf({ positions: new Float64Array(3), indices: Uint32Array.of(0, 0, 0) }, sheet),
    ).toBeNull()
  })
})
