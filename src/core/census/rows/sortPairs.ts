/**
 * Sorts the pairs of numbers from the `begin`-th to before the `end`-th by their first ones, in place. By insertion: a row's
 * crossings or stretches are a handful, mostly in order already.
 */
export function sortPairs(pairs: Float64Array, begin: number, end: number): void {
  for (let i = begin + 1; i < end; i++) {
    const first = pairs[2 * i]!
    const second = pairs[2 * i + 1]!
    let j = i - 1
    while (j >= begin && pairs[2 * j]! > first) {
      pairs[2 * j + 2] = pairs[2 * j]!
      pairs[2 * j + 3] = pairs[2 * j + 1]!
      j--
    }
    pairs[2 * j + 2] = first
    pairs[2 * j + 3] = second
  }
}
