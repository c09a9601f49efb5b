import type { Mesh } from '../../../src/core/model/mesh.ts'
import type { KnownHabits } from '../../../src/core/model/habits.ts'
import type { Pose } from '../../../src/core/model/settings.ts'
import { median } from '../median.ts'
import { asLaid } from './asLaid.ts'
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
 * tell. No pair that checks teaches.
 */
export function learnHabits(own: Laid, all: readonly Laid[]): KnownHabits {
  const { habits } = asLaid(own.pair)
  const others = all
    .filter(({ pair, shaped }) => shaped && pair !== own.pair && alike(pair, own.pair))
    .map(({ pair }) => asLaid(pair).habits)
  const taught = TAUGHT.flatMap((habit) => {
    const told = others.map((other) => other[habit]).filter((value) => value !== undefined)
    return told.length > 0 ? [[habit, median(told)] as const] : []
  })
  return { ...Object.fromEntries(taught), ...habits }
}

/** By the same hand, on the same machine, as far as can be told. */
function alike(a: Pair, b: Pair): boolean {
  return a.author === b.author && a.layerMm === b.layerMm && a.pattern === b.pattern
}
