import type { Joint, JointFastener } from '../../model/joints.ts'
import { INSERTS, NUTS, THREADS } from './data.ts'
import { addedBy, columnOf, hundredths, meeting, type Column, type Hole } from './screwColumn.ts'
import type { StackEnd } from './stack.ts'
import { stackUp } from './stackUp.ts'

/** What is bought to hold one joint. */
export interface JointScrews {
  readonly jointId: string
  /** Bores of a that meet a bore of b. */
  readonly holes: number
  /**
   * From under the head to where the screw bites, the longest of its holes; of a joint that ends no screw, what it
   * adds to one. mm
   */
  readonly gripMm: number
  /** `M3 × 16`: shortest stocked ISO 4762 that does for every hole. Null where none fits, or where no screw ends. */
  readonly screw: string | null
  /** Screws that end here, whether a stocked one fits or not. */
  readonly count: number
  /** What is wrong, each in a sentence. */
  readonly warnings: readonly string[]
}

/**
 * The screws of each joint, in the order given. A bore of a `through` joint hands its screw on to the joint that
 * shares a bore with it and ends the screw, which counts it. A head let into its part is not seen, nor what fills a
 * gap: both are taken as clamped.
 */
export function screwsOf(joints: readonly Joint[]): readonly JointScrews[] {
  const holesOf = new Map(joints.map((joint) => [joint, meeting(joint)]))
  const handing = [...holesOf.values()].flat().filter(({ joint }) => isThrough(joint.fastener))
  const handedOn = new Set<Hole>()
  const ended = new Map<Joint, readonly Column[]>()
  for (const [joint, holes] of holesOf) {
    const { fastener } = joint
    if (fastener === null || isThrough(fastener)) continue
    ended.set(
      joint,
      holes.map((hole) => columnOf(hole, fastener, handing, handedOn)),
    )
  }
  return joints.map((joint): JointScrews => {
    const holes = holesOf.get(joint) ?? []
    const columns = ended.get(joint)
    const { id: jointId, fastener } = joint
    if (columns !== undefined && fastener !== null && columns.length > 0) {
      return { jointId, holes: holes.length, ...chosen(columns, fastener), count: columns.length }
    }
    const gripMm = hundredths(Math.max(0, ...holes.map(({ a, b }) => addedBy(joint, a, b))))
    const warnings = endless(fastener, holes, handedOn)
    return { jointId, holes: holes.length, gripMm, screw: null, count: 0, warnings }
  })
}

function isThrough(fastener: JointFastener | null): boolean {
  return fastener?.end === 'through'
}

/** One screw for all holes of a joint: long enough for the longest way, too short to meet the nearest bottom. */
function chosen(
  columns: readonly Column[],
  { thread, end }: JointFastener,
): Pick<JointScrews, 'gripMm' | 'screw' | 'warnings'> {
  const longestMm = Math.max(...columns.map(({ gripMm }) => gripMm))
  const bottoms = columns.flatMap(({ gripMm, bitten }) =>
    bitten === null || (bitten.openLow && bitten.openHigh)
      ? []
      : [gripMm + hundredths(bitten.depthMm)],
  )
  const nearestMm =
    bottoms.length === 0 ? null : Math.max(0, hundredths(Math.min(...bottoms) - longestMm))
  const answer = stackUp({
    standard: 'ISO 4762',
    size: thread,
    layers: [{ name: 'What it clamps', thicknessMm: Math.max(0, longestMm) }],
    washers: 0,
    end: stackEnd(end, thread, nearestMm),
    lengthMm: null,
  })
  const { gripMm, lengthMm, leastMm } = answer
  const biteMm = hundredths(leastMm - gripMm)
  const wideMm = Math.max(...columns.map(({ bitten }) => bitten?.diameterMm ?? 0))
  const { diameterMm } = THREADS[thread]
  if (end === 'tapped' && wideMm >= diameterMm) {
    const told =
      `No thread to bite in: the bore is ${mm(wideMm)} mm wide, an ${thread} screw cuts into less than ` +
      `${mm(diameterMm)} mm. A threaded post in a gap takes a screw at each end, ` +
      'which is not counted here.'
    return { gripMm, screw: null, warnings: [told] }
  }
  const shallowMm = Math.min(
    nearestMm ?? Infinity,
    ...columns.map(({ bitten }) => (bitten === null ? Infinity : hundredths(bitten.depthMm))),
  )
  if (shallowMm < biteMm) {
    const told =
      `Bore too shallow to hold: an ${thread} screw wants ${mm(biteMm)} mm to bite in, ` +
      `it has ${mm(shallowMm)} mm.`
    return { gripMm, screw: null, warnings: [told] }
  }
  const screw = lengthMm === null ? null : `${thread} × ${lengthMm}`
  return { gripMm, screw, warnings: answer.warnings.map(({ text }) => text) }
}

/** A nut is a locknut where its size has one; an insert has the usual length. */
function stackEnd(
  end: JointFastener['end'],
  thread: JointFastener['thread'],
  holeDepthMm: number | null,
): StackEnd {
  if (end === 'insert') {
    return { kind: 'insert', insertMm: INSERTS[thread].lengthMm, bossMm: null, holeDepthMm }
  }
  if (end === 'tapped') return { kind: 'plastic', bossMm: null, holeDepthMm }
  const isLocked = NUTS['ISO 7040'][thread] !== undefined
  return { kind: 'nut', standard: isLocked ? 'ISO 7040' : 'ISO 4032' }
}

/** Why a fastener ends no screw. */
function endless(
  fastener: JointFastener | null,
  holes: readonly Hole[],
  handedOn: ReadonlySet<Hole>,
): readonly string[] {
  if (fastener === null) return []
  if (holes.length === 0) return ['No bores meet here, so no screw is counted.']
  const lost = holes.filter((hole) => !handedOn.has(hole)).length
  if (lost === 0) return []
  return [
    `${lost} of ${holes.length} screws end nowhere: no joint with an ${fastener.thread} nut, ` +
      'insert or thread shares the bore.',
  ]
}

/** At most two decimals, none needless. */
function mm(value: number): string {
  return String(Number(value.toFixed(2)))
}
