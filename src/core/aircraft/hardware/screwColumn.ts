import { lengthOf, minus } from '../../model/vectors.ts'
import type { BoreMark, Joint, JointEnd, JointFastener } from '../../model/joints.ts'
import { INSERTS } from './data.ts'

/** Bores nearer than this are one. mm */
const SAME_BORE_MM = 0.01
/** Bores of a joint that differ less in width do not tell which of them is bitten. mm */
const SAME_WIDTH_MM = 0.1

/** One bore over another. */
export interface Hole {
  readonly joint: Joint
  readonly a: Bore
  readonly b: Bore
}

/** A bore of one piece. */
export interface Bore {
  readonly at: Pick<JointEnd, 'partId' | 'piece'>
  readonly mark: BoreMark
}

/** The way of one screw: all that it crosses before it ends. */
export interface Column {
  readonly hole: Hole
  readonly gripMm: number
  /** All that it goes through, from where it ends towards its head. */
  readonly crossed: readonly Bore[]
  /** What it bites in; null for a nut or a post. */
  readonly bitten: Bore | null
  /** The bore under a post's end, or that a nut lies on. */
  readonly last: Bore
}

/** No screw goes down where a peg stands. */
export function meeting(joint: Joint): readonly Hole[] {
  const { a, b } = joint
  return a.bores.flatMap((mark, i): Hole[] => {
    const other = b.bores[i]
    if (other === undefined || mark.kind === 'peg' || other.kind === 'peg') return []
    return [{ joint, a: { at: a, mark }, b: { at: b, mark: other } }]
  })
}

export function addedBy({ gapMm }: Joint, ...crossed: readonly Bore[]): number {
  return crossed.reduce((sum, { mark }) => sum + mark.depthMm, gapMm)
}

export function isBlind({ mark }: Bore): boolean {
  return !mark.openLow || !mark.openHigh
}

/**
 * Whether the screw of a hole bites in a and not in b: the blind one of them; else of a thread cut
 * into plastic the narrower, of an insert the one nearer to the hole it is set into; else b.
 */
export function bitesInA({ a, b }: Hole, { end, thread }: JointFastener): boolean {
  if (isBlind(a) !== isBlind(b)) return isBlind(a)
  const wanted = end === 'insert' ? INSERTS[thread].holeMm : 0
  const off = ({ mark }: Bore): number => Math.abs(mark.diameterMm - wanted)
  return off(a) < off(b) - SAME_WIDTH_MM
}

function isSame(one: Bore, other: Bore): boolean {
  return (
    one.at.partId === other.at.partId &&
    one.at.piece === other.at.piece &&
    lengthOf(minus(one.mark.centreMm, other.mark.centreMm)) <= SAME_BORE_MM
  )
}

/** The screws of one hole: one, or one from either side into a post. */
export function columnsOf(
  hole: Hole,
  fastener: JointFastener,
  handing: readonly Hole[],
  handedOn: Set<Hole>,
): readonly Column[] {
  const { joint, a, b } = hole
  const column = (first: readonly Bore[], gapMm: number, bitten: Bore | null): Column => ({
    hole,
    ...gripOf(first, gapMm, fastener, handing, handedOn),
    bitten,
    last: first.at(-1) ?? b,
  })
  if (fastener.end === 'post') return [column([a], 0, null), column([b], 0, null)]
  if (fastener.end === 'nut') return [column([a, b], joint.gapMm, null)]
  return bitesInA(hole, fastener) ? [column([b], joint.gapMm, a)] : [column([a], joint.gapMm, b)]
}

/** Goes from where a screw ends up to its head. */
function gripOf(
  first: readonly Bore[],
  gapMm: number,
  { thread }: JointFastener,
  handing: readonly Hole[],
  handedOn: Set<Hole>,
): Pick<Column, 'gripMm' | 'crossed'> {
  const crossed = [...first]
  let gripMm = first.reduce((sum, { mark }) => sum + mark.depthMm, gapMm)
  const seen = new Set<Hole>()
  // Grows as it is walked.
  for (const bore of crossed) {
    for (const more of handing) {
      if (seen.has(more) || more.joint.fastener?.thread !== thread) continue
      const next = isSame(more.a, bore) ? more.b : isSame(more.b, bore) ? more.a : null
      if (next === null) continue
      seen.add(more)
      handedOn.add(more)
      gripMm += addedBy(more.joint, next)
      crossed.push(next)
    }
  }
  return { gripMm: hundredths(gripMm), crossed }
}

/** Depths are found on meshes: their last decimals must not ask for the next longer screw. */
export function hundredths(lengthMm: number): number {
  return Math.round(100 * lengthMm) / 100
}
