import { screwsOf, type JointScrews } from '../../core/aircraft/hardware/jointHardware.ts'
import type { Way } from '../../core/joints/waysFor.ts'
import type { ItemBody } from '../../core/model/aircraft.ts'
import type { Joint, JointEnd } from '../../core/model/joints.ts'
import { lengthOf, minus } from '../../core/model/vectors.ts'
import { showLength } from '../show.ts'
import { bodyIn, type Joinable } from './pieces.ts'

type Bare = Omit<Joint, 'id'>

/** What would hold a joint that is not made yet. */
function screwsFor(joint: Bare, bodyOf: BodyOf): JointScrews | undefined {
  return screwsOf([{ ...joint, id: 'offered' }], undefined, bodyOf)[0]
}

/** The body of a bought thing; undefined of a printed part. */
export type BodyOf = (itemId: string) => ItemBody | undefined

/** `2 holes 12 mm apart`, `shaft of 12 mm`, `face on face`; with what parts the faces. */
export function meetingWords(joint: Bare): string {
  const { gapMm, fastener } = joint
  const words = touchWords(joint)
  if (gapMm === 0) return words
  const by = fastener?.end === 'post' ? 'posts' : 'a gap'
  return `${words}, across ${by} of ${showLength(gapMm, 1)}`
}

function touchWords({ kind, a, b }: Bare): string {
  const [first, second] = a.bores
  if (kind === 'drawn') return 'as the files lie'
  if (first === undefined) return 'face on face'
  if (kind === 'shaft' || isPeg(a) || isPeg(b)) {
    const { diameterMm } = (isPeg(a) ? a : b).bores[0] ?? first
    return a.bores.length > 1
      ? `${a.bores.length} pegs of ${showLength(diameterMm, 1)}`
      : `shaft of ${showLength(diameterMm, 1)}`
  }
  if (second === undefined) return `1 hole of ${showLength(first.diameterMm, 1)}`
  const apart = showLength(lengthOf(minus(first.centreMm, second.centreMm)), 1)
  return a.bores.length === 2
    ? `2 holes ${apart} apart`
    : `${a.bores.length} holes, the first two ${apart} apart`
}

const isPeg = ({ bores }: JointEnd): boolean => bores[0]?.kind === 'peg'

/** `M3 by 16`, as it is said; the screw alone where no length fits. */
export function screwSaid(joint: Bare, bodyOf: BodyOf): string {
  const { fastener } = joint
  if (fastener === null) return 'no screw'
  const screw = screwsFor(joint, bodyOf)?.screw ?? null
  return screw === null ? fastener.thread : screw.replace(' × ', ' by ')
}

/** Which side of the standing piece, as the aircraft flies. */
export function sideWords({ out: [x, y, z] }: Pick<Way, 'out'>): string {
  if (z > ASLANT) return 'on top'
  if (z < -ASLANT) return 'below'
  if (Math.abs(x) > ASLANT) return x > 0 ? 'in front' : 'behind'
  if (Math.abs(y) > ASLANT) return y > 0 ? 'on the left' : 'on the right'
  return 'aslant'
}
/** Cosine of a direction that has a name. */
const ASLANT = 0.9

/** How a screw ends, said behind its name. */
const END_WORDS = {
  nut: 'nut',
  insert: 'into an insert',
  tapped: 'into the plastic',
  post: 'post, both ends',
  through: 'goes on',
} as const

/** How a joint's screws end; in what is bought they find a thread. */
export function endWords({ a, b, fastener }: Bare, parts: readonly Joinable[]): string {
  if (fastener === null) return ''
  const isBought = [a, b].some(({ partId }) => bodyIn(parts, partId) !== undefined)
  return fastener.end === 'tapped' && isBought ? 'into its thread' : END_WORDS[fastener.end]
}
