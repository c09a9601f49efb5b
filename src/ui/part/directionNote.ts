import { layerDirectionNote } from '../../core/figures/layerDirection.ts'
import { poseBounds } from '../../core/mesh/poseBounds.ts'
import type { Bounds } from '../../core/model/mesh.ts'
import type { Pose } from '../../core/model/settings.ts'

/**
 * What lying so does to the strength of a long part; null for others. Judged by the box round the
 * part, in mm as drawn.
 */
export function directionNote(boundsMm: Bounds, pose: Pose): string | null {
  return layerDirectionNote(poseBounds(boundsMm, pose))
}
