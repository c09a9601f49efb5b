import type { Mesh } from '../../../src/core/model/mesh.ts'
import type { Bead } from '../../../src/core/model/habits.ts'
import type { Pose } from '../../../src/core/model/settings.ts'
import { median } from '../median.ts'
import { asLaid, type AsLaid } from './asLaid.ts'
import type { Pair } from './readPairs.ts'

/** A pair with its mesh as it lies on the bed. */
export interface Laid {
  readonly pair: Pair
  readonly mesh: Mesh
  readonly pose: Pose
  readonly shaped: boolean
}

/** What other parts may tell where a part's own moves do not. */
const TAUGHT = ['overlapShare', 'strandShare'] as const

/**
 * Habits as a user has them who printed other parts with the same settings: the part's own moves
 * tell first; what they do not is the middle of what the moves of the maker's other shaping parts
 * tell. How lines end is the same whatever a maker lays, so that all of those tell it, and widths
 * are read by it. No pair that checks teaches.
 */
export function learnHabits(own: Laid, all: readonly Laid[]): AsLaid {
  const makers = all
    .filter(({ pair, shaped }) => shaped && pair !== own.pair && pair.author === own.pair.author)
    .map(({ pair }) => pair)
  const bead = agreedBead(makers)
  const { pair, habits } = asLaid(own.pair, bead)
  const others = makers
    .filter((other) => alike(other, own.pair))
    .map((other) => asLaid(other, bead).habits)
  const taught = TAUGHT.flatMap((habit) => {
    const told = others.map((other) => other[habit]).filter((value) => value !== undefined)
    return told.length > 0 ? [[habit, median(told)] as const] : []
  })
  return { pair, habits: { ...(bead && { bead }), ...Object.fromEntries(taught), ...habits } }
}

/** What all that tell it say. */
function agreedBead(pairs: readonly Pair[]): Bead | undefined {
  const told = pairs.map((pair) => asLaid(pair).habits.bead).filter((bead) => bead !== undefined)
  return told.every((bead) => bead === told[0]) ? told[0] : undefined
}

/** On the same machine, as far as can be told of one maker. */
function alike(a: Pair, b: Pair): boolean {
  return a.layerMm === b.layerMm && a.pattern === b.pattern
}
