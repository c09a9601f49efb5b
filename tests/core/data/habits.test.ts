import { expect, test } from 'vitest'
import { HABIT_RANGES, refuseHabits } from '../../../src/core/data/habits.ts'
import { HABIT_LIMITS } from '../../../src/core/data/limits.ts'
import { HABIT_DEFAULTS, habitsOf } from '../../../src/core/model/habits.ts'

test('every default lies inside its range, and the range inside what is accepted', () => {
  for (const [key, { low, high }] of Object.entries(HABIT_RANGES)) {
    const habit = key as keyof typeof HABIT_RANGES
    const usual = HABIT_DEFAULTS[habit]
    const { min, max } = HABIT_LIMITS[habit]
    expect(usual, key).toBeGreaterThanOrEqual(low)
    expect(usual, key).toBeLessThanOrEqual(high)
    expect(low, key).toBeGreaterThanOrEqual(min)
    expect(high, key).toBeLessThanOrEqual(max)
  }
})

test('what is known of a printer stands over what is usual', () => {
  expect(habitsOf({})).toEqual(HABIT_DEFAULTS)
  expect(habitsOf({ habits: { holdMm: 3 } })).toEqual({ ...HABIT_DEFAULTS, holdMm: 3 })
})

test.each([
  [{ hold: 3 }, 'no habit “hold”'],
  [{ holdMm: -1 }, '“holdMm” must be a number from 0 to 20'],
  [{ holdMm: '1' }, '“holdMm” must be'],
  [{ holdMm: NaN }, '“holdMm” must be'],
  [{ bead: 'oval' }, '“bead” must be square or round'],
  [{ gapLines: 'yes' }, '“gapLines” must be true or false'],
])('refuses %j by name', (told, words) => {
  expect(refuseHabits(told)).toContain(words)
})

test('takes every default', () => {
  expect(refuseHabits({ ...HABIT_DEFAULTS })).toBeNull()
})
