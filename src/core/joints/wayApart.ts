import type { RigidMap } from '../mesh/rigidMaps.ts'
import type { Joint } from '../model/joints.ts'
import type { Vec3 } from '../model/mesh.ts'
import { plus, times } from '../model/vectors.ts'
import { pieceKey } from './placePieces.ts'
import { wayIn } from './wayIn.ts'

/**
 * Which way each piece goes when the drawing comes apart, by piece: one step along every joint
 * between it and the piece of its group with most of its holes joined, which stays. In the frame's
 * axes; a step is of length 1. Pieces that no joint leads to have none.
 */
export function wayApart(
  joints: readonly Joint[],
  motions: ReadonlyMap<string, RigidMap>,
): ReadonlyMap<string, Vec3> {
  const links = joints.flatMap((joint) => {
    const way = wayIn(joint, motions)
    if (way === null || !motions.has(pieceKey(joint.b))) return []
    const [a, b] = [pieceKey(joint.a), pieceKey(joint.b)]
    return [
      { from: a, to: b, way, holes: Math.max(1, joint.a.bores.length) },
      { from: b, to: a, way: times(way, -1), holes: Math.max(1, joint.b.bores.length) },
    ]
  })
  const counts = new Map<string, number>()
  for (const { from, holes } of links) counts.set(from, (counts.get(from) ?? 0) + holes)
  const ways = new Map<string, Vec3>()
  for (const [root] of [...counts].toSorted(([, one], [, other]) => other - one)) {
    if (ways.has(root)) continue
    ways.set(root, [0, 0, 0])
    const waiting = [root]
    for (const at of waiting) {
      for (const { from, to, way } of links) {
        if (from !== at || ways.has(to)) continue
        ways.set(to, plus(ways.get(at) ?? [0, 0, 0], way))
        waiting.push(to)
      }
    }
  }
  return ways
}
