import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { rulerWindow } from '../../src/ui/head/rulerWindow.ts'

const SEED = 20_271_126
/**
 * Ends of the band, limit and carbon, from a lens hood to a wing; 0.01 g is the finest that is
 * shown.
 */
const MARKS = fc.array(
  fc.integer({ min: 0, max: 500_000 }).map((hundredths) => hundredths / 100),
  { minLength: 1, maxLength: 5 },
)

/** How often `step` goes into `length`; a whole number but for the last bits of a float. */
function stepsIn(length: number, step: number): number {
  const steps = length / step
  expect(Math.abs(steps - Math.round(steps)), `${step} in ${length}`).toBeLessThan(1e-6)
  return Math.round(steps)
}

describe('the stretch of the gram scale that is shown', () => {
  test('is 120 to 170 g for marks from 136 to 158, numbered every 10 g', () => {
    expect(rulerWindow([136, 150, 158])).toEqual({ low: 120, high: 170, major: 10 })
  })

  test('begins at 0 where a break would save nothing', () => {
    expect(rulerWindow([3, 9]).low).toBe(0)
    expect(rulerWindow([0, 90]).low).toBe(0)
  })

  test('is there without any mass', () => {
    for (const none of [[], [0], [0, 0]]) {
      const { low, high, major } = rulerWindow(none)
      expect([low, high > 0, major > 0]).toEqual([0, true, true])
    }
  })

  test('holds every mark, with room above it and, where the scale is broken, below it', () => {
    fc.assert(
      fc.property(MARKS, (marks) => {
        const { low, high, major } = rulerWindow(marks)
        expect(low).toBeGreaterThanOrEqual(0)
        for (const mark of marks) {
          expect(mark).toBeLessThan(high)
          expect(mark).toBeGreaterThanOrEqual(low === 0 ? 0 : low + major - 1e-6)
        }
      }),
      { seed: SEED, numRuns: 2000 },
    )
  })

  test('begins and ends on a number, with two to ten steps between, each 1, 2 or 5 of a power of ten', () => {
    fc.assert(
      fc.property(MARKS, (marks) => {
        const { low, high, major } = rulerWindow(marks)
        const lead = Number(major.toExponential().split('e')[0])
        expect(
          [1, 2, 5].some((nice) => Math.abs(lead - nice) < 1e-6),
          `${major}`,
        ).toBe(true)
        stepsIn(low, major)
        const steps = stepsIn(high - low, major)
        expect(steps).toBeGreaterThanOrEqual(2)
        expect(steps).toBeLessThanOrEqual(10)
      }),
      // Printed 90 g where what is bought has used up the limit: 0 to 150 g is no whole number of
      // twenties.
      { seed: SEED, numRuns: 2000, examples: [[[0, 90]], [[0.5, 9]]] },
    )
  })
})
