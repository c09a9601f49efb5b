import { createScratch } from './scratch.ts'

/** Places a pair may move on average before it is left to merging. */
const MOVES_EACH = 16

const mergeSpace = createScratch()

/**
 * Sorts the pairs of numbers from the `begin`-th to before the `end`-th by their first ones, in
 * place; of equal ones the order stays. By insertion: a row's crossings or stretches are a handful,
 * mostly in order already. Where many lie far from their place, as the stretches of a brim round a
 * thousand teeth, by merging: the work then grows with n log n.
 */
export function sortPairs(pairs: Float64Array, begin: number, end: number): void {
  let left = MOVES_EACH * (end - begin)
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
    left -= i - 1 - j
    if (left < 0) {
      mergePairs(pairs, begin, end)
      return
    }
  }
}

/** Merges stretches of 1, 2, 4 … pairs from one of two places to the other. */
function mergePairs(pairs: Float64Array, begin: number, end: number): void {
  const count = end - begin
  let from = pairs.subarray(2 * begin, 2 * end)
  let to = mergeSpace.floats(2 * count).subarray(0, 2 * count)
  for (let width = 1; width < count; width *= 2) {
    for (let low = 0; low < count; low += 2 * width) {
      const middle = Math.min(count, low + width)
      const high = Math.min(count, low + 2 * width)
      let a = low
      let b = middle
      for (let at = low; at < high; at++) {
        const one = b >= high || (a < middle && from[2 * a]! <= from[2 * b]!) ? a++ : b++
        to[2 * at] = from[2 * one]!
        to[2 * at + 1] = from[2 * one + 1]!
      }
    }
    const swap = from
    from = to
    to = swap
  }
  if (from.buffer !== pairs.buffer) pairs.set(from, 2 * begin)
}
