import { describe, expect, it } from 'vitest'
import { paceOf } from '../../../src/core/figures/curves.ts'
import { infillSpacingMm, PATTERN_MODELS } from '../../../src/core/figures/infill.ts'
import { RECIPE_DEFAULTS } from '../../../src/core/model/settings.ts'
import type { Recipe } from '../../../src/core/model/settings.ts'

const MOTION = { speedMmS: 90, accelMmS2: 2000, cornerMmS: 12 }

/** Time along the path ÷ time along a straight line of the same length. */
function timesStraight(infillPct: number, motion = MOTION): number {
  const recipe: Recipe = { ...RECIPE_DEFAULTS, pattern: 'gyroid', infillPct }
  return motion.speedMmS / paceOf('gyroid', infillSpacingMm(recipe), motion)
}

describe('pace along gyroid waves', () => {
  // The same cut, sin x cos y + sin y cos z + sin z cos x = 0, driven by a simulation that shares
  // no code with ours: 0.4 mm line, 90 mm/s, 2000 mm/s², 12 mm/s at a right angle, with v²/r ≤ a
  // (derived for this check; no published figure is known). Nothing here was fitted to it but the
  // number of facets, which changes it by less than 4 %.
  it.each([
    [10, 1.17],
    [20, 1.6],
    [30, 1.94],
    [50, 2.49],
  ])('at %s percent takes %s times as long as straight lines', (infillPct, times) => {
    expect(Math.abs(timesStraight(infillPct) / times - 1)).toBeLessThan(0.02)
  })

  it('is that of straight lines where waves are wide or the machine slow', () => {
    expect(timesStraight(1)).toBeLessThan(1.02)
    expect(timesStraight(30, { speedMmS: 5, accelMmS2: 5000, cornerMmS: 12 })).toBeLessThan(1.001)
  })

  it('never is above the motion’s speed, nor below what v²/r ≤ a leaves at the tightest turn', () => {
    for (const spacingMm of [0.5, 1, 3, 10]) {
      const pace = paceOf('gyroid', spacingMm, MOTION)
      expect(pace).toBeLessThanOrEqual(MOTION.speedMmS)
      // A full stop at each of four turns a wave would be slower by far.
      expect(pace).toBeGreaterThan(Math.sqrt(MOTION.accelMmS2 * spacingMm) / 4)
    }
  })
})

describe('pace along honeycomb', () => {
  it('is by hand: cell sides between corners of 60°', () => {
    const recipe: Recipe = { ...RECIPE_DEFAULTS, pattern: 'honeycomb', infillPct: 20 }
    const spacing = infillSpacingMm(recipe)
    expect(spacing).toBeCloseTo((PATTERN_MODELS.honeycomb.pathFactor * 0.4) / 0.2, 9)
    const side = (2 / Math.sqrt(3)) * spacing
    // The jump 2·v·sin(30°) is that of 12 mm/s at a right angle: 12·√2 = 16.97 mm/s; too short a
    // side for 90 mm/s.
    const corner = 12 * Math.SQRT2
    const peak = Math.sqrt(corner ** 2 + MOTION.accelMmS2 * side)
    const seconds = (2 * (peak - corner)) / MOTION.accelMmS2
    expect(paceOf('honeycomb', spacing, MOTION)).toBeCloseTo(side / seconds, 6)
  })
})
