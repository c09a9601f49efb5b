import { mapPoint } from '../mesh/rigidMaps.ts'
import type { BoreMark, Joint, JointEnd } from '../model/joints.ts'
import type { Vec3 } from '../model/mesh.ts'
import { dot, lengthOf, minus, plus, times } from '../model/vectors.ts'
import { jointMotion, wayOf } from './jointMotion.ts'

/** Axes that meet are off by no more. mm */
const OFF_MM = 0.15

/**
 * The other ways the same bores meet: b turned over, on a's other side, or both; where bores go
 * through.
 */
export function turnsOver<J extends Omit<Joint, 'id'>>(joint: J): readonly J[] {
  const { a, b } = joint
  return [
    { ...joint, b: otherSide(b) },
    { ...joint, a: otherSide(a) },
    { ...joint, a: otherSide(a), b: otherSide(b) },
  ].flatMap((each): readonly J[] => {
    if (each.a === null || each.b === null) return []
    const turned = settled({ ...each, a: each.a, b: each.b })
    return turned === null ? [] : [turned]
  })
}

/**
 * An end that touches with the far ends of its bores. Null where one of them is blind, a peg, or
 * nothing touches.
 */
function otherSide(end: JointEnd): JointEnd | null {
  const [first] = end.bores
  if (first === undefined || end.face === null) return null
  if (end.bores.some(({ kind, openLow, openHigh }) => kind === 'peg' || !openLow || !openHigh))
    return null
  const { normal, pointMm } = end.face
  const height = dot(minus(pointMm, first.centreMm), normal)
  return {
    ...end,
    face: { pointMm: plus(pointMm, times(normal, -2 * height)), normal: times(normal, -1) },
  }
}

/** With b's bores in the order in which they meet a's; null where no order does. */
function settled<J extends Omit<Joint, 'id'>>(joint: J): J | null {
  for (const bores of orders(joint.b.bores)) {
    const tried = { ...joint, b: { ...joint.b, bores } }
    if (offAxesMm(tried) <= OFF_MM) return tried
  }
  return null
}

/** Up to six bores in every order, as they are first. */
function* orders(bores: readonly BoreMark[]): Generator<readonly BoreMark[]> {
  if (bores.length < 2) {
    yield bores
    return
  }
  for (let i = 0; i < bores.length; i++) {
    for (const rest of orders(bores.toSpliced(i, 1))) yield [bores[i]!, ...rest]
  }
}

/** Furthest that the axes of bores that should meet are apart where the joint puts b. mm */
export function offAxesMm(joint: Omit<Joint, 'id'>): number {
  const motion = jointMotion(joint)
  const way = wayOf(joint.a)
  const offs = joint.a.bores.map(({ centreMm }, i) => {
    const other = joint.b.bores[i]
    return other === undefined
      ? 0
      : besideMm(minus(mapPoint(motion, other.centreMm), centreMm), way)
  })
  return Math.max(0, ...offs)
}

/** Of a way, what is square to a unit vector. */
export function besideMm(off: Vec3, way: Vec3): number {
  return lengthOf(minus(off, times(way, dot(off, way))))
}
