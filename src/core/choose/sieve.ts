import { createStaircase, type Staircase } from './staircase.ts'
import type { Worth } from './types.ts'

/** Keeps what nothing before it is as good as. */
export interface Sieve {
  /** Whether one let through before is no worse in everything: so it stays. */
  readonly covers: (worth: Worth) => boolean
  /** Keeps a worth that nothing covers; false for one that something does. */
  readonly letsThrough: (worth: Worth) => boolean
}

/**
 * The exact front of worths that come in the order of `byMass`: one that comes later is never
 * lighter, so that hours, money and stiffness alone decide. Stairs of hours and money hang on a
 * Fenwick tree (P. M. Fenwick, Software: Practice and Experience 24, 1994, 327–336) over the
 * stiffnesses there are, so that one question and one answer take log² steps, whatever the front.
 */
export function createSieve(stiffnesses: Iterable<number>): Sieve {
  const ranks = new Map(
    [...new Set(stiffnesses)].toSorted((a, b) => b - a).map((value, i) => [value, i + 1]),
  )
  const size = ranks.size
  const stairs: (Staircase | undefined)[] = []
  const rankOf = ({ stiffness }: Worth): number => ranks.get(stiffness) ?? size
  const covers = (worth: Worth): boolean => {
    // Everything at least as stiff lies in ranks 1 to its own.
    for (let at = rankOf(worth); at > 0; at -= at & -at) {
      if (stairs[at]?.covers(worth.timeS, worth.cost) === true) return true
    }
    return false
  }
  return {
    covers,
    letsThrough(worth) {
      if (covers(worth)) return false
      const { timeS, cost } = worth
      for (let at = rankOf(worth); at <= size; at += at & -at) {
        const own = stairs[at] ?? createStaircase()
        stairs[at] = own
        own.add(timeS, cost)
      }
      return true
    },
  }
}

/**
 * Lightest first; of equals the quicker, the cheaper, the stiffer. What is no worse than another
 * comes before it.
 */
export function byMass(a: Worth, b: Worth): number {
  if (a.massG !== b.massG) return a.massG - b.massG
  if (a.timeS !== b.timeS) return a.timeS - b.timeS
  if (a.cost !== b.cost) return a.cost - b.cost
  // Two that may be infinite have no difference.
  return a.stiffness === b.stiffness ? 0 : a.stiffness > b.stiffness ? -1 : 1
}

/**
 * Those that none of the others is as good as in everything; of equal ones the first. Lightest
 * first.
 */
export function frontOf<T extends Worth>(all: readonly T[]): readonly T[] {
  const sieve = createSieve(all.map(({ stiffness }) => stiffness))
  return all.toSorted(byMass).filter((one) => sieve.letsThrough(one))
}
