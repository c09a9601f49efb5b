import { describe, expect, test } from 'vitest'
import { columnsOf, inColumns } from '../../../src/core/joints/columns.ts'
import { flatAxes } from '../../../src/core/mesh/holes/fitCircle.ts'
import type { Mesh, Vec3 } from '../../../src/core/model/mesh.ts'
import { holed, lay, outlineOf, randomLay, scattered } from '../../support/jointShapes.ts'
import { box, sphere, torus } from '../../support/meshes.ts'
import { seededRandom } from '../../support/random.ts'

/**
 * Where a straight meets the mesh: every triangle asked, by the three volumes it makes with the
 * straight.
 */
function everyCrossing({ positions, indices }: Mesh, from: Vec3, along: Vec3): readonly number[] {
  const minus = (p: Vec3, q: Vec3): Vec3 => [p[0] - q[0], p[1] - q[1], p[2] - q[2]]
  const volume = (p: Vec3, q: Vec3, r: Vec3) =>
    p[0] * (q[1] * r[2] - q[2] * r[1]) +
    p[1] * (q[2] * r[0] - q[0] * r[2]) +
    p[2] * (q[0] * r[1] - q[1] * r[0])
  const corner = (c: number): Vec3 => {
    const v = 3 * indices[c]!
    return minus([positions[v]!, positions[v + 1]!, positions[v + 2]!], from)
  }
  const heights: number[] = []
  for (let t = 0; t < indices.length; t += 3) {
    const [a, b, c] = [corner(t), corner(t + 1), corner(t + 2)]
    const shares = [volume(along, b, c), volume(along, c, a), volume(along, a, b)]
    const whole = shares[0]! + shares[1]! + shares[2]!
    if (whole === 0 || shares.some((share) => share / whole < 0)) continue
    const at = [0, 1, 2].map(
      (k) => (shares[0]! * a[k]! + shares[1]! * b[k]! + shares[2]! * c[k]!) / whole,
    )
    heights.push(at[0]! * along[0] + at[1]! * along[1] + at[2]! * along[2])
  }
  return heights.toSorted((p, q) => p - q)
}

describe('columns of a solid', () => {
  const random = seededRandom(5)
  const plate = holed(outlineOf('ring', 90), 4, scattered(random, 7, [80, 60], 20, 8), 1.7, 24)
  const solids: [string, Mesh][] = [
    ['a box', box(10, 20, 5)],
    ['a ball', sphere(12, 40)],
    ['a ring', torus(20, 5, 48, 24)],
    ['a drilled plate', plate],
    ['a drilled plate, turned', lay(plate, randomLay(random))],
  ]
  test.each(solids)('of %s are those that every triangle gives, in any direction', (_, mesh) => {
    for (let turn = 0; turn < 6; turn++) {
      const raw: Vec3 = turn === 0 ? [0, 0, 1] : [random() - 0.5, random() - 0.5, random() - 0.5]
      const length = Math.hypot(...raw)
      const along: Vec3 = [raw[0] / length, raw[1] / length, raw[2] / length]
      const { right, up } = flatAxes(along)
      const columns = columnsOf(mesh, along)
      const [x0, x1, y0, y1] = columns.box
      for (let n = 0; n < 120; n++) {
        const x = x0 + random() * (x1 - x0)
        const y = y0 + random() * (y1 - y0)
        const point = [0, 1, 2].map((k) => x * right[k]! + y * up[k]!) as unknown as Vec3
        expect(inColumns(columns, point)[0]).toBeCloseTo(x, 9)
        const spans = columns.spansAt(x, y)
        const slow = everyCrossing(mesh, point, along)
        expect(spans).toHaveLength(slow.length)
        // The columns stand aside by 4e-7; on a steep side that is more along it.
        spans.forEach((height, i) => expect(Math.abs(height - slow[i]!)).toBeLessThan(1e-3))
      }
    }
  })
})
