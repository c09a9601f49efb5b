import type { Mesh } from '../../model/mesh.ts'
import { NO_BODY } from '../bodies.ts'
import { judgeBodies } from '../judgeBodies.ts'
import { findSpecks } from '../measureFindings.ts'
import { orientMesh } from '../orient.ts'
import { takeApart } from '../takeApart.ts'

/**
 * The mesh faced outwards (see `orientMesh`) and without the tiny loose bodies that `measureMesh`
 * reports as stray.
 */
export function cleanMesh(mesh: Mesh): Mesh {
  const apart = takeApart(mesh)
  const { bodies, sums } = apart
  if (bodies.count === 0) return mesh
  const judged = judgeBodies(mesh, bodies, sums, 1)
  const stray = new Set(findSpecks(judged).map(({ place }) => place))
  if (stray.size === 0) return orientMesh(mesh, apart)
  const { indices } = mesh
  const out = new Uint32Array(indices.length)
  let written = 0
  bodies.bodyOf.forEach((body, t) => {
    if (body === NO_BODY || stray.has(body)) return
    for (let k = 0; k < 3; k++) out[written++] = indices[3 * t + k]!
  })
  return orientMesh({ positions: mesh.positions, indices: out.slice(0, written) })
}
