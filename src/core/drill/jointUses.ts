import { bitesInA, meeting } from '../aircraft/hardware/screwColumn.ts'
import { THREADS } from '../aircraft/hardware/data.ts'
import type { Neck } from '../mesh/holes/findNecks.ts'
import { isOneAxis, offAxis } from '../mesh/holes/oneAxis.ts'
import type { HoleUse } from '../model/drill.ts'
import type { BoreMark, Joint, JointEnd } from '../model/joints.ts'
import type { Vec3 } from '../model/mesh.ts'
import { minus } from '../model/vectors.ts'

/** A bore and what its joint lets it be for. */
export interface JointUse {
  readonly partId: string
  readonly bore: BoreMark
  readonly use: HoleUse
}

/**
 * A neck is one for a hole of its own width to within this share; wider ones pass it, narrower ones
 * rattle.
 */
const NECK_SHARE = { least: 0.8, most: 1.15 } as const
/** How far off each other axes that are one may lie. mm */
const OFF_MM = 0.1

/**
 * What bores are for by the joints they are in. Bores that nothing screws together tell it only
 * where a peg, a rod or the neck of the other part stands in them.
 *
 * @param necksOf necks of a part, by its id.
 */
export function jointUses(
  joints: readonly Joint[],
  necksOf: (partId: string) => readonly Neck[],
): readonly JointUse[] {
  return joints.flatMap((joint) => [...screwUses(joint), ...plugUses(joint, necksOf)])
}

function screwUses(joint: Joint): readonly JointUse[] {
  const { fastener } = joint
  if (fastener === null) return []
  const { end, thread } = fastener
  return meeting(joint).flatMap((hole): JointUse[] => {
    const bitten =
      end !== 'insert' && end !== 'tapped' ? null : bitesInA(hole, fastener) ? 'a' : 'b'
    return (['a', 'b'] as const).map((side) => {
      const { at, mark } = hole[side]
      // A threaded post in the gap takes a screw from either side: neither bore holds a thread
      // then.
      const bites =
        side === bitten && !(end === 'tapped' && mark.diameterMm >= THREADS[thread].diameterMm)
      const kind = !bites ? 'screw' : end === 'insert' ? 'insert' : 'tapped'
      return { partId: at.partId, bore: mark, use: { kind, thread } }
    })
  })
}

function plugUses(
  { fastener, kind, a, b }: Joint,
  necksOf: (partId: string) => readonly Neck[],
): readonly JointUse[] {
  if (fastener !== null) return []
  return a.bores.flatMap((mark, i): JointUse[] => {
    const other = b.bores[i]
    if (other === undefined) return []
    return [
      ...plugged(a, mark, b, other, kind, necksOf),
      ...plugged(b, other, a, mark, kind, necksOf),
    ]
  })
}

/** What a bore is for by what stands in it. */
function plugged(
  end: JointEnd,
  bore: BoreMark,
  otherEnd: JointEnd,
  other: BoreMark,
  kind: Joint['kind'],
  necksOf: (partId: string) => readonly Neck[],
): readonly JointUse[] {
  if (bore.kind === 'peg') return []
  const { partId } = end
  if (other.kind === 'peg') {
    return [{ partId, bore, use: { kind: 'shaft', shaftMm: other.diameterMm } }]
  }
  if (kind === 'shaft') {
    const shaftMm = Math.min(bore.diameterMm, other.diameterMm)
    return [{ partId, bore, use: { kind: 'shaft', shaftMm } }]
  }
  const neck = necksOf(otherEnd.partId).find((each) => {
    const share = each.diameterMm / bore.diameterMm
    return share >= NECK_SHARE.least && share <= NECK_SHARE.most && onAxis(each, other)
  })
  if (neck === undefined) return []
  const use = { kind: 'damper', neckMm: neck.diameterMm, grooveMm: neck.widthMm } as const
  return [{ partId, bore, use }]
}

function onAxis({ axis, centreMm }: Neck, bore: { axis: Vec3; centreMm: Vec3 }): boolean {
  return isOneAxis(axis, bore.axis) && offAxis(minus(centreMm, bore.centreMm), axis) <= OFF_MM
}
