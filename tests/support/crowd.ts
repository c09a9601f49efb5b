import type { Mesh, Vec3 } from '../../src/core/model/mesh.ts'
import { merge, rotate, tetrahedron, translate } from './meshes.ts'
import { seededRandom } from './random.ts'

/** Tetrahedra thrown into a cube, turned anyhow; slender ones are `slender` times as long as wide. */
export function crowd(bodies: number, edgeMm: number, cubeMm: number, slender = 1): Mesh {
  const random = seededRandom(79)
  const stretched = tetrahedron(edgeMm)
  const one = {
    ...stretched,
    positions: stretched.positions.map((value, i) => (i % 3 === 2 ? value * slender : value)),
  }
  return merge(
    Array.from({ length: bodies }, () => {
      const turn: Vec3 = [360 * random(), 360 * random(), 360 * random()]
      const to: Vec3 = [cubeMm * random(), cubeMm * random(), cubeMm * random()]
      return translate(rotate(one, turn), to)
    }),
  )
}
