import { frameHardware } from '../core/aircraft/hardware/jointItems.ts'
import type { JointScrews } from '../core/aircraft/hardware/jointHardware.ts'
import { itemPieces } from '../core/joints/itemPieces.ts'
import type { Frame } from '../core/model/frame.ts'
import type { JointEnd } from '../core/model/joints.ts'

/** One joint of a frame and the screws that end in it. */
export interface JointReport extends Omit<JointScrews, 'jointId'> {
  /** Names of the parts, or bought things, that meet. */
  readonly a: string
  readonly b: string
}

/** Of joints whose pieces both fly, in the order of the frame. */
export function jointReports(frame: Pick<Frame, 'parts' | 'aircraft'>): readonly JointReport[] {
  const pieces = [...frame.parts, ...itemPieces(frame.aircraft.items)]
  const names = new Map(pieces.map(({ id, name }) => [id, name]))
  const nameOf = ({ partId }: JointEnd): string => names.get(partId) ?? ''
  return frameHardware(frame).map(({ joint, told: { jointId: _id, ...screws } }) => ({
    a: nameOf(joint.a),
    b: nameOf(joint.b),
    ...screws,
  }))
}
