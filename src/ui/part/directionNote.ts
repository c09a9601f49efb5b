import { layerDirectionNote } from '../../core/figures/layerDirection.ts'
import { placeMesh } from '../../core/geometry/pose.ts'
import type { Bounds } from '../../core/mesh.ts'
import type { Pose } from '../../core/settings.ts'

/** What lying so does to the strength of a long part; null for others. Judged by the box round the part, in mm as drawn. */
export function directionNote({ min, max }: Bounds, pose: Pose): string | null {
  const corners = [0, 1, 2, 3, 4, 5, 6, 7].flatMap((i) =>
    [0, 1, 2].map((k) => ((i >> k) & 1 ? (max[k] ?? 0) : (min[k] ?? 0))),
  )
  const box = {
    positions: Float64Array.from(corners),
    indices: Uint32Array.of(0, 1, 2, 3, 4, 5, 6, 7, 0),
  }
  const { positions } = placeMesh(box, 1, pose)
  const reach = (k: number, pick: (...values: number[]) => number) =>
    pick(...positions.filter((_, i) => i % 3 === k))
  return layerDirectionNote({
    min: [reach(0, Math.min), reach(1, Math.min), reach(2, Math.min)],
    max: [reach(0, Math.max), reach(1, Math.max), reach(2, Math.max)],
  })
}
