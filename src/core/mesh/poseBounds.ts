import type { Bounds, Vec3 } from '../model/mesh.ts'
import type { Pose } from '../model/settings.ts'
import { turnMatrix } from './pose.ts'

/**
 * The box round a part turned into its pose, in the unit of `bounds`. Exact for quarter turns;
 * otherwise the box round the turned box, which the part does not fill.
 */
export function poseBounds({ min, max }: Bounds, pose: Pose): Bounds {
  const turn = turnMatrix(pose)
  const low: number[] = []
  const high: number[] = []
  for (let row = 0; row < 3; row++) {
    const ends = [0, 1, 2].map((k) => {
      const factor = turn[3 * row + k] ?? 0
      return [factor * (min[k] ?? 0), factor * (max[k] ?? 0)] as const
    })
    low.push(ends.reduce((sum, pair) => sum + Math.min(...pair), 0))
    high.push(ends.reduce((sum, pair) => sum + Math.max(...pair), 0))
  }
  return { min: low as unknown as Vec3, max: high as unknown as Vec3 }
}

/** Whether every face of the box stays square to the axes. */
export function isQuarterTurn(pose: Pose): boolean {
  return pose.rotateDeg.every((angle) => Number.isInteger(angle / 90))
}
