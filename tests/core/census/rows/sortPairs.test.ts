import fc from 'fast-check'
import { expect, test } from 'vitest'
import { sortPairs } from '../../../../src/core/census/rows/sortPairs.ts'

test('sorts as the language does, equal ones kept in order, and leaves alone what lies outside', () => {
  const first = fc.oneof(
    fc.integer({ min: 0, max: 9 }),
    fc.double({ min: -9, max: 1e9, noNaN: true }),
  )
  const pair = fc.tuple(first, fc.integer())
  // Some hundred pairs are spread into bins, and, where most share one, left to merging.
  const lists = fc.oneof(fc.array(pair), fc.array(pair, { minLength: 100, maxLength: 600 }))
  fc.assert(
    fc.property(lists, fc.nat(5), fc.nat(5), (list, before, after) => {
      const begin = Math.min(before, list.length)
      const end = Math.max(begin, list.length - after)
      const pairs = Float64Array.from(list.flat())
      sortPairs(pairs, begin, end)
      const middle = list.slice(begin, end).toSorted(([a], [b]) => a - b)
      expect([...pairs]).toEqual([...list.slice(0, begin), ...middle, ...list.slice(end)].flat())
    }),
    { seed: 1125 },
  )
})
