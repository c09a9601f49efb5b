import { createScratch } from './scratch.ts'

/** Places a pair may move on average before it is left to merging. */
const MOVES_EACH = 16

/** Rows of so many pairs are spread into bins before they are sorted. */
const CROWDED = 256

const mergeSpace = createScratch()
const binSpace = createScratch()

/**
 * Sorts the pairs of numbers from the `begin`-th to before the `end`-th by their first ones, in
 * place; of equal ones the order stays. By insertion: a row's crossings or stretches are a handful,
 * mostly in order already. A crowded row is spread into as many bins first, which takes a tenth of
 * the time of merging. Where many lie far from their place all the same, as the stretches of a brim
 * round a thousand teeth, by merging: the work then grows with n log n.
 */
export function sortPairs(pairs: Float64Array, begin: number, end: number): void {
  if (end - begin >= CROWDED) spreadPairs(pairs, begin, end)
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

/** Puts pairs in order of as many bins of equal width, those of one bin as they came. */
function spreadPairs(pairs: Float64Array, begin: number, end: number): void {
  const count = end - begin
  let low = Infinity
  let high = -Infinity
  for (let i = begin; i < end; i++) {
    const first = pairs[2 * i]!
    if (first < low) low = first
    if (first > high) high = first
  }
  if (!(high > low)) return
  const scale = (count - 1) / (high - low)
  const ints = binSpace.ints(2 * count + 1)
  const starts = ints.subarray(0, count + 1)
  const binOf = ints.subarray(count + 1, 2 * count + 1)
  starts.fill(0)
  for (let k = 0; k < count; k++) {
    const bin = ((pairs[2 * (begin + k)]! - low) * scale) | 0
    binOf[k] = bin
    starts[bin + 1]!++
  }
  for (let bin = 0; bin < count; bin++) starts[bin + 1]! += starts[bin]!
  const to = mergeSpace.floats(2 * count)
  for (let k = 0; k < count; k++) {
    const at = 2 * starts[binOf[k]!]!++
    to[at] = pairs[2 * (begin + k)]!
    to[at + 1] = pairs[2 * (begin + k) + 1]!
  }
  pairs.set(to.subarray(0, 2 * count), 2 * begin)
}
