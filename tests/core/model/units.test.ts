import { expect, test } from 'vitest'
import { unitToMm } from '../../../src/core/model/units.ts'

test('every unit of the 3MF standard is so many millimetres', () => {
  // The inch and the foot: international yard and pound agreement of 1959. The others: SI prefixes.
  // 12 × 25.4 is 304.8, which a product of doubles just misses.
  expect(unitToMm('inch')).toBe(25.4)
  expect(unitToMm('foot')).toBe(304.8)
  expect(unitToMm('micron')).toBe(1 / 1000)
  expect(unitToMm('millimetre')).toBe(1)
  expect(unitToMm('centimetre')).toBe(10)
  expect(unitToMm('metre')).toBe(1000)
})
