import { screwsOf, type JointScrews } from '../core/aircraft/hardware/screwsOf.ts'
import type { Frame } from '../core/model/frame.ts'
import type { JointEnd } from '../core/model/joints.ts'

/** One joint of a frame and the screws that end in it. */
export interface JointReport extends Omit<JointScrews, 'jointId'> {
  /** Names of the parts that meet. */
  readonly a: string
  readonly b: string
}

/** Of joints whose pieces both fly, in the order of the frame. */
export function jointReports({ parts, aircraft }: Frame): readonly JointReport[] {
  const known = new Map(parts.map((part) => [part.id, part]))
  const flies = ({ partId, piece }: JointEnd): boolean => piece < (known.get(partId)?.quantity ?? 0)
  const sound = aircraft.joints.filter(({ a, b }) => flies(a) && flies(b))
  const nameOf = (end: JointEnd | undefined): string => known.get(end?.partId ?? '')?.name ?? ''
  return screwsOf(sound).map(({ jointId: _id, ...screws }, i) => ({
    a: nameOf(sound[i]?.a),
    b: nameOf(sound[i]?.b),
    ...screws,
  }))
}
