import type { BoreMark, Joint, JointEnd } from '../model/joints.ts'
import { isSameBore } from './boresOf.ts'

/** What a part came apart into. */
export interface HeirPart {
  readonly partId: string
  /** Its bores as it lay in the whole, in mm. */
  readonly bores: readonly BoreMark[]
  /** How many of it the whole held. */
  readonly count: number
}

/**
 * Joints of a part that came apart go on with the piece that has all their holes where they were;
 * of equal pieces that is the one whose mesh was kept, the first. A joint whose holes went to
 * several pieces, or that had none, is lost.
 */
export function handOverJoints(
  joints: readonly Joint[],
  partId: string,
  heirs: readonly HeirPart[],
): { readonly kept: readonly Joint[]; readonly lost: readonly Joint[] } {
  const handOver = (end: JointEnd): JointEnd | null => {
    if (end.partId !== partId) return end
    const heir = heirs.find(
      ({ bores }) =>
        end.bores.length > 0 &&
        end.bores.every((mark) => bores.some((bore) => isSameBore(mark, bore))),
    )
    return heir === undefined
      ? null
      : { ...end, partId: heir.partId, piece: end.piece * heir.count }
  }
  const kept: Joint[] = []
  const lost: Joint[] = []
  for (const joint of joints) {
    const [a, b] = [handOver(joint.a), handOver(joint.b)]
    if (a === null || b === null) lost.push(joint)
    else kept.push(a === joint.a && b === joint.b ? joint : { ...joint, a, b })
  }
  return { kept, lost }
}
