/**
 * A small seeded generator (the public-domain "mulberry32" recurrence): the same seed gives the
 * same numbers, each in [0, 1).
 */
export function seededRandom(seed: number): () => number {
  let state = seed >>> 0
  return () => {
    state = (state + 0x6d2b79f5) >>> 0
    let mixed = Math.imul(state ^ (state >>> 15), state | 1)
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61)
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296
  }
}

/** A new array in an order set by `random` (Fisher and Yates). */
export function shuffled<T>(items: readonly T[], random: () => number): T[] {
  const result = [...items]
  for (let i = result.length - 1; i > 0; i--) {
    const j = Math.floor(random() * (i + 1))
    const held = result[i]!
    result[i] = result[j]!
    result[j] = held
  }
  return result
}

/**
 * Seeded draws from the normal bell of mean 0 and deviation 1 (Box and Muller 1958, doi
 * 10.1214/aoms/1177706645).
 */
export function seededNormal(seed: number): () => number {
  const random = seededRandom(seed)
  return () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random())
}
