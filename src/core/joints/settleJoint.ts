import { type RigidMap } from '../mesh/rigidMaps.ts'
import type { Joint } from '../model/joints.ts'
import { dot, minus } from '../model/vectors.ts'
import { jointMotion, wayOf } from './jointMotion.ts'

/** Angles and ways below this are rounding. */
const TIDY = 1e9

/**
 * The joint with the turn and slide by which `jointMotion` puts b where `motion` does, as far as
 * its ends let it.
 */
export function settleJoint<J extends Omit<Joint, 'id'>>(joint: J, motion: RigidMap): J {
  const way = wayOf(joint.a)
  const bare = { ...joint, turnDeg: 0, slideMm: 0 }
  const [a, b, c, d, e, f, g, h, i] = motion.matrix
  const [p, q, r, s, t, u, v, w, x] = jointMotion(bare).matrix
  // Of the turn that comes on top, R = motion · startᵀ: twice its sine along the axis, and its
  // trace.
  const double =
    way[0] * (g * s + h * t + i * u - (d * v + e * w + f * x)) +
    way[1] * (a * v + b * w + c * x - (g * p + h * q + i * r)) +
    way[2] * (d * p + e * q + f * r - (a * s + b * t + c * u))
  const trace = a * p + b * q + c * r + d * s + e * t + f * u + g * v + h * w + i * x
  const turnDeg = tidy((Math.atan2(double / 2, (trace - 1) / 2) * 180) / Math.PI)
  const isFree = joint.kind !== 'drawn' && joint.a.bores.length < 2
  const turned = isFree ? { ...bare, turnDeg } : bare
  if (joint.kind === 'drawn' || (joint.a.face !== null && joint.b.face !== null)) return turned
  const slideMm = tidy(dot(minus(motion.move, jointMotion(turned).move), way))
  return { ...turned, slideMm }
}

/** Adding 0 turns −0 into 0. */
function tidy(value: number): number {
  return Math.round(value * TIDY) / TIDY + 0
}
