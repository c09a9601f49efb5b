import { describe, expect, test } from 'vitest'
import type { Mesh } from '../../../../src/core/model/mesh.ts'
import { censusOf, relative } from '../../../support/censusCase.ts'
import { circle, prism, rectangle, rotate, box, merge, translate } from '../../../support/meshes.ts'

const supportOf = (mesh: Mesh) => censusOf(mesh, { supports: true }).supportMm3

/**
 * A gate seen from the front, pulled along y: two posts and a lintel 4 mm high over a gap `gap`
 * wide and 10 high.
 */
const gate = (gap: number, depth = 20) =>
  rotate(
    prism(
      [
        [0, 0],
        [8, 0],
        [8, 10],
        [8 + gap, 10],
        [8 + gap, 0],
        [16 + gap, 0],
        [16 + gap, 14],
        [0, 14],
      ],
      depth,
    ),
    [90, 0, 0],
  )

describe('bridges', () => {
  for (const turn of [0, 30, 90, 135]) {
    // Under 1 % of the 1200 mm³ below the lintel: where rows graze its free edge.
    test(`a gap of 6 mm between two posts needs no support, the gate turned by ${turn}°`, () => {
      expect(supportOf(rotate(gate(6), [0, 0, turn]))).toBeLessThan(12)
    })
  }

  test('a gap of 12 mm is too wide: the columns under it fill it', () => {
    // What the posts hold of it: a step of 0.2 mm × tan 50° from either side.
    const held = 2 * 0.2 * Math.tan((50 * Math.PI) / 180)
    expect(relative(supportOf(gate(12)), (12 - held) * 20 * 10)).toBeLessThan(0.02)
  })

  test('a ledge on one side alone is an overhang, however close the other wall', () => {
    // A wall, a 4 mm gap, and a post with a 3 mm ledge reaching into the gap at 10 mm.
    const ledge = rotate(
      prism(
        [
          [0, 0],
          [17, 0],
          [17, 14],
          [10, 14],
          [10, 12],
          [13, 12],
          [13, 2],
          [8, 2],
          [8, 14],
          [0, 14],
        ],
        20,
      ),
      [90, 0, 0],
    )
    expect(supportOf(ledge)).toBeGreaterThan(0.8 * 2.5 * 20 * 10)
  })

  test('a lying round hole of 6 mm needs no support; one of 20 mm does', () => {
    const lying = (radius: number) =>
      rotate(prism(rectangle(30, 30), 20, [circle(radius, 64, 15, 15)]), [90, 0, 0])
    expect(supportOf(lying(3))).toBeLessThan(2)
    expect(supportOf(lying(10))).toBeGreaterThan(100)
  })

  test('the roof of a closed round pocket is a bridge, a table top on one leg is not', () => {
    const pocket = merge([
      prism(rectangle(20, 20), 5, [circle(4, 48, 10, 10)]),
      translate(box(20, 20, 3), [0, 0, 5]),
    ])
    expect(supportOf(pocket)).toBeLessThan(1)
    const table = merge([box(4, 4, 10), translate(box(20, 20, 3), [-8, -8, 10])])
    expect(supportOf(table)).toBeGreaterThan(3000)
  })
})
