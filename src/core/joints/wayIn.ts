import { mapDirection, type RigidMap } from '../mesh/rigidMaps.ts'
import type { Joint } from '../model/joints.ts'
import type { Vec3 } from '../model/mesh.ts'
import { pieceKey } from './placePieces.ts'

/**
 * The way on which b comes off a, in the frame's axes: out of a's face, or along the bore that a
 * shaft slides in. Unit length; null where neither tells it, or a has no place.
 */
export function wayIn({ a }: Joint, motions: ReadonlyMap<string, RigidMap>): Vec3 | null {
  const motion = motions.get(pieceKey(a))
  const own = a.face?.normal ?? a.bores[0]?.axis
  return motion === undefined || own === undefined ? null : mapDirection(motion, own)
}
