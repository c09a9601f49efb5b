import { inverse, after, mapDirection, mapPoint, type RigidMap } from '../mesh/rigidMaps.ts'
import type { Joint } from '../model/joints.ts'
import { dot, minus } from '../model/vectors.ts'
import { besideMm } from './turnOver.ts'
import { wayOf } from './jointMotion.ts'

/** How far a joint is from what it says, where its pieces are. mm */
export interface JointStrain {
  /** Furthest that two axes that should meet are apart, at either end of b's bores. */
  readonly axesMm: number
  /** Between the faces, above what is typed; in each other where negative. 0 without faces. */
  readonly gapMm: number
}

/**
 * Axes further apart, and gaps wider than this are worth a look (common practice, no source). mm
 */
export const STRAINED = { axesMm: 0.1, gapMm: 0.2 } as const

export const isStrained = ({ axesMm, gapMm }: JointStrain): boolean =>
  axesMm > STRAINED.axesMm || Math.abs(gapMm) > STRAINED.gapMm

/** @param motionA where the mesh of a is on the aircraft; `motionB` likewise. */
export function jointStrain(
  { a, b, gapMm }: Omit<Joint, 'id'>,
  motionA: RigidMap,
  motionB: RigidMap,
): JointStrain {
  const step = after(inverse(motionA), motionB)
  const way = wayOf(a)
  const offs = a.bores.flatMap(({ centreMm }, i) => {
    const other = b.bores[i]
    if (other === undefined) return []
    const from = minus(mapPoint(step, other.centreMm), centreMm)
    const lean = besideMm(mapDirection(step, other.axis), way)
    return [besideMm(from, way) + (lean * other.depthMm) / 2]
  })
  const isTouching = a.face !== null && b.face !== null
  const betweenMm = isTouching
    ? dot(minus(mapPoint(step, b.face.pointMm), a.face.pointMm), way) - gapMm
    : 0
  return { axesMm: Math.max(0, ...offs), gapMm: betweenMm }
}
