import type { Mesh } from '../model/mesh.ts'
import { NO_BODY, type Bodies } from './bodies.ts'
import { judgeBodies } from './judgeBodies.ts'
import type { BodyJudgement } from './measureFindings.ts'
import { takeApart } from './takeApart.ts'
import type { BodySums } from './volume.ts'

/**
 * The mesh as it is meant: every body faces outwards, every cavity inwards, and what encloses
 * nothing is left out (copies of triangles, the back of a two-sided surface, loose sheets). So a
 * winding rule counts the same inside as `measureMesh`: an inside-out body no longer cancels the
 * one it overlaps. Gaps stay open.
 *
 * Bodies in `leftOut` are left out. Gives back the mesh itself where there is nothing to change.
 * Vertices are shared.
 */
export function orientMesh(
  mesh: Mesh,
  { bodies, sums } = takeApart(mesh),
  leftOut: ReadonlySet<number> = new Set(),
): Mesh {
  const { indices } = mesh
  const judged = judgeBodies(mesh, bodies, sums, 1)
  const action = judged.map((judgement, body) => actionFor(judgement, body, sums))
  addLooseSides(bodies, judged, action)
  for (const body of leftOut) action[body] = 'drop'
  const out = new Uint32Array(indices.length)
  let written = 0
  let changed = false
  for (let t = 0; t < bodies.bodyOf.length; t++) {
    const body = bodies.bodyOf[t]!
    const what = body === NO_BODY ? 'drop' : action[body]!
    if (what === 'drop') {
      changed = true
      continue
    }
    const turn = (bodies.turned[t] === 1) !== (what === 'turn')
    changed ||= turn
    out[written] = indices[3 * t]!
    out[written + 1] = indices[3 * t + (turn ? 2 : 1)]!
    out[written + 2] = indices[3 * t + (turn ? 1 : 2)]!
    written += 3
  }
  if (!changed || written === 0) return mesh
  return { positions: mesh.positions, indices: out.slice(0, written) }
}

type Action = 'keep' | 'turn' | 'drop'

function actionFor(judgement: BodyJudgement, body: number, sums: BodySums): Action {
  if (judgement.kind === 'reverse copy') return 'drop'
  if (judgement.kind === 'sheet') {
    // A closed body whose lobes cancel each other encloses something all the same.
    return sums.backedTriangles[body] === sums.triangles[body] ? 'drop' : 'keep'
  }
  const outwards = sums.volume[body]! > 0
  return outwards === (judgement.kind === 'cavity') ? 'turn' : 'keep'
}

/** Sheets with an open rim enclose nothing. */
function addLooseSides(bodies: Bodies, judged: readonly BodyJudgement[], action: Action[]): void {
  for (const side of bodies.loose) {
    const body = bodies.bodyOf[Math.floor(side / 3)]!
    if (body !== NO_BODY && judged[body]!.kind === 'sheet') action[body] = 'drop'
  }
}
