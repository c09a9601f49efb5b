/** Values nearer than this are one, as a share. */
const STEP = 1.005

/**
 * How much of something has which value, on a scale of even ratios: the middle costs no list of
 * all.
 */
export interface Spread {
  /** Of no value above 0 nothing is kept. */
  readonly add: (value: number, weight: number) => void
  /** Adds all of it to another. */
  readonly pourInto: (other: Spread) => void
  readonly weight: () => number
  /** The value that `share` of the weight lies below; null where there is none. */
  readonly quantile: (share: number) => number | null
}

export function spread(): Spread {
  const weights = new Map<number, number>()
  let all = 0
  return {
    add(value, weight) {
      if (!(value > 0)) return
      const bin = Math.round(Math.log(value) / Math.log(STEP))
      weights.set(bin, (weights.get(bin) ?? 0) + weight)
      all += weight
    },
    pourInto(other) {
      for (const [bin, weight] of weights) other.add(STEP ** bin, weight)
    },
    weight: () => all,
    quantile(share) {
      let left = all * share
      for (const [bin, weight] of [...weights].sort(([a], [b]) => a - b)) {
        left -= weight
        if (left <= 0) return STEP ** bin
      }
      return null
    },
  }
}
