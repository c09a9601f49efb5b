import { mapAxes, type RigidMap } from '../mesh/rigidMaps.ts'
import { times } from '../model/vectors.ts'
import type { FlatFace } from './types.ts'

/** Equal faces differ by no more than this share of area, and of how it lies. */
const SAME_AREA = 0.005
const SAME_SHAPE = 0.01
/** A face as wide as long, within this share, does not tell how it is turned. */
const ROUND = 0.03

/** Two faces that could be glued on each other. */
export interface FaceMatch {
  readonly a: FlatFace
  readonly b: FlatFace
  /** Where b goes, in a's coordinates. */
  readonly motion: RigidMap
}

/**
 * Equal flat faces laid on each other, b's against a's; round and square ones are left out: any
 * turn would do.
 */
export function matchFaces(a: readonly FlatFace[], b: readonly FlatFace[]): readonly FaceMatch[] {
  return a.flatMap((one) => b.flatMap((other) => match(one, other)))
}

function match(a: FlatFace, b: FlatFace): readonly FaceMatch[] {
  if (Math.abs(a.areaMm2 / b.areaMm2 - 1) > SAME_AREA) return []
  const [long, wide] = a.gyrationMm
  if (wide > (1 - ROUND) * long) return []
  if (Math.abs(b.gyrationMm[0] - long) > SAME_SHAPE * long) return []
  if (Math.abs(b.gyrationMm[1] - wide) > SAME_SHAPE * long) return []
  // Seen from a's side b is turned over: along its length it keeps its sense, across it the other.
  return ([1, -1] as const).flatMap((way): readonly FaceMatch[] => {
    const along = Math.abs(a.skewMm[0] - way * b.skewMm[0])
    const across = Math.abs(a.skewMm[1] + way * b.skewMm[1])
    // A cube root tells small skews from none too well.
    if (along > 0.2 * long || across > 0.2 * wide) return []
    const motion = mapAxes(
      [times(b.along, way), times(b.across, -way), times(b.normal, -1)],
      [a.along, a.across, a.normal],
      b.centreMm,
      a.centreMm,
    )
    return [{ a, b, motion }]
  })
}
