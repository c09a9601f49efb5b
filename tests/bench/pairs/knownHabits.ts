import type { KnownHabits } from '../../../src/core/model/habits.ts'
import type { Mesh } from '../../../src/core/model/mesh.ts'
import type { Pose } from '../../../src/core/model/settings.ts'
import { median } from '../median.ts'
import type { Pair } from './readPairs.ts'
import { reckon } from './reckon.ts'

/** A pair with its mesh as it lies on the bed. */
export interface Laid {
  readonly pair: Pair
  readonly mesh: Mesh
  readonly pose: Pose
}

/** What one printer's owner may try, habit by habit, the most telling first. */
const TRIED: readonly KnownHabits[] = [
  ...[0.5, 1, 2, 3, 4, 5, 6].map((mm) => ({ slopeBandMm: mm, holdMm: mm })),
  ...[0, 0.1, 0.2, 0.3, 0.4].map((overlapShare) => ({ overlapShare })),
  ...[10, 25, 50, 100].map((smallRoomMm2) => ({ smallRoomMm2 })),
  ...[0, 0.25, 0.4, 0.5].map((joinedShare) => ({ joinedShare })),
  ...[1, 1.2, 1.4].map((strandShare) => ({ strandShare })),
]

/** Two rounds: what the second changes is little. */
const ROUNDS = 2

/**
 * Habits as they would be learnt from toolpaths: widths by kind off the pair's own, all others off
 * the other parts that were laid with the same settings, one habit after the other, by the least
 * median miss. Widths alone where there is no other part.
 */
export function learnHabits(own: Laid, all: readonly Laid[]): KnownHabits {
  const others = all.filter(({ pair }) => pair !== own.pair && alike(pair, own.pair))
  if (others.length === 0) return widthsOf(own.pair)
  let best: KnownHabits = {}
  let least = missOf(others, best)
  for (let round = 0; round < ROUNDS; round++) {
    for (const habit of TRIED) {
      const tried: KnownHabits = Object.assign({}, best, habit)
      const miss = missOf(others, tried)
      if (miss >= least) continue
      least = miss
      best = tried
    }
  }
  return { ...best, ...widthsOf(own.pair) }
}

/** By the same hand, on the same machine, as far as can be told. */
function alike(a: Pair, b: Pair): boolean {
  return (
    a.author === b.author &&
    a.layerMm === b.layerMm &&
    a.walls === b.walls &&
    a.pattern === b.pattern
  )
}

function widthsOf({ seen: { beadMm, beads } }: Pair): KnownHabits {
  const share = (bead: number | null): number =>
    bead === null ? 1 : Math.min(1.5, Math.max(0.7, bead / beadMm))
  const walls = share(beads.walls)
  return { outerWidthShare: walls, innerWidthShare: walls, infillWidthShare: share(beads.sparse) }
}

const known = new Map<string, number>()

function missOf(others: readonly Laid[], habits: KnownHabits): number {
  return median(
    others.map(({ pair, mesh, pose }) => {
      const tried = { ...habits, ...widthsOf(pair) }
      const key = `${pair.name} ${JSON.stringify(tried)}`
      const before = known.get(key)
      if (before !== undefined) return before
      const { depositMm3 } = reckon(pair, mesh, pose, tried)
      const miss = Math.abs(depositMm3 / pair.seen.partMm3 - 1)
      known.set(key, miss)
      return miss
    }),
  )
}
