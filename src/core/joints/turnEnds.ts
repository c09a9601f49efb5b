import { inverse } from '../mesh/rigidMaps.ts'
import type { Joint } from '../model/joints.ts'
import { jointMotion } from './jointMotion.ts'
import { settleJoint } from './settleJoint.ts'

/** The same joint told from its other piece: b, which is placed, becomes a. */
export function turnEnds<J extends Omit<Joint, 'id'>>(joint: J): J {
  return settleJoint({ ...joint, a: joint.b, b: joint.a }, inverse(jointMotion(joint)))
}
