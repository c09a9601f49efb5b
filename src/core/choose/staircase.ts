/**
 * Pairs of which none is as good as another in both numbers, less being better: as the first grows
 * the second falls. Both questions cost a binary search, adding one shifts what stands behind it.
 */
export interface Staircase {
  /** Whether a kept pair is no worse in both. */
  readonly covers: (a: number, b: number) => boolean
  /** Keeps a pair, and drops those it is no worse than. */
  readonly add: (a: number, b: number) => void
}

export function createStaircase(): Staircase {
  const firsts: number[] = []
  const seconds: number[] = []

  /** How many firsts are not above `a`. */
  function upTo(a: number): number {
    let low = 0
    let high = firsts.length
    while (low < high) {
      const middle = (low + high) >> 1
      if ((firsts[middle] ?? 0) <= a) low = middle + 1
      else high = middle
    }
    return low
  }

  const covers = (a: number, b: number): boolean => {
    const at = upTo(a)
    // Of all with a first not above `a`, the last has the least second.
    return at > 0 && (seconds[at - 1] ?? Infinity) <= b
  }

  return {
    covers,
    add(a, b) {
      if (covers(a, b)) return
      // One with the same first is worse in the second, or it would cover.
      const at = upTo(a)
      const from = at > 0 && firsts[at - 1] === a ? at - 1 : at
      let to = at
      while (to < seconds.length && (seconds[to] ?? 0) >= b) to++
      firsts.splice(from, to - from, a)
      seconds.splice(from, to - from, b)
    },
  }
}
