import type { BoreMark, JointEnd } from '../model/joints.ts'
import type { Vec3 } from '../model/mesh.ts'

const scaledPoint = ([x, y, z]: Vec3, factor: number): Vec3 => [x * factor, y * factor, z * factor]

/** The same bore on a part that is so many times as large. */
export function scaleBore(bore: BoreMark, factor: number): BoreMark {
  return {
    ...bore,
    centreMm: scaledPoint(bore.centreMm, factor),
    diameterMm: bore.diameterMm * factor,
    depthMm: bore.depthMm * factor,
  }
}

/** The same end on a part that is so many times as large. */
export function scaleEnd(end: JointEnd, factor: number): JointEnd {
  if (factor === 1) return end
  const { bores, face } = end
  return {
    ...end,
    bores: bores.map((bore) => scaleBore(bore, factor)),
    face: face === null ? null : { ...face, pointMm: scaledPoint(face.pointMm, factor) },
  }
}
