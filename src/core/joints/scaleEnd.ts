import type { BoreMark, JointEnd } from '../model/joints.ts'
import type { Vec3 } from '../model/mesh.ts'

/** The same end on a part that is so many times as large. */
export function scaleEnd(end: JointEnd, factor: number): JointEnd {
  if (factor === 1) return end
  const scaled = ([x, y, z]: Vec3): Vec3 => [x * factor, y * factor, z * factor]
  return {
    ...end,
    bores: end.bores.map((bore): BoreMark => ({
      ...bore,
      centreMm: scaled(bore.centreMm),
      diameterMm: bore.diameterMm * factor,
      depthMm: bore.depthMm * factor,
    })),
    face: end.face === null ? null : { ...end.face, pointMm: scaled(end.face.pointMm) },
  }
}
