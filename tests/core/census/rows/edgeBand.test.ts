import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { scanEdgeBand } from '../../../../src/core/census/rows/edgeBand.ts'
import { planGrid } from '../../../../src/core/census/rows/scanGrid.ts'
import type { Outline } from '../../../../src/core/census/cut/simplify.ts'
import { distanceMm, holds, round, star } from '../../../support/outlines.ts'

/*
 * The slow obvious way: the distance from a place to every edge. Places are tried all along every
 * row; those closer to a boundary of the band than mitres and the step of the trial allow decide
 * nothing.
 */
const STEP_MM = 0.05
const SLACK_MM = 0.004

/** Number of places tried, and of those where the band disagrees with the distance. */
function disagreements(outline: Outline, radiusMm: number, along: 0 | 1) {
  const grid = planGrid(along, -12, 12, 0, 1)
  const band = scanEdgeBand(outline, radiusMm, grid)
  let tried = 0
  let wrong = 0
  for (let row = 0; row < grid.rows; row++) {
    const across = grid.originMm + (row + 0.5) * grid.pitchMm
    for (let at = -12; at < 12; at += STEP_MM) {
      const [u, v] = along === 0 ? [at, across] : [across, at]
      const mm = distanceMm(outline, u, v)
      if (mm < SLACK_MM || Math.abs(mm - radiusMm) < SLACK_MM) continue
      tried++
      if (holds(band, row, at) !== mm < radiusMm) wrong++
    }
  }
  return { tried, wrong }
}

describe('the band along an outline', () => {
  test('holds what is near on either side, and nothing that is far', () => {
    fc.assert(
      fc.property(
        star,
        fc.double({ min: 0.1, max: 2.5, noNaN: true }),
        fc.constantFrom<(0 | 1)[]>(0, 1),
        (outline, radiusMm, along) => {
          const { tried, wrong } = disagreements(outline, radiusMm, along)
          expect(tried).toBeGreaterThan(100)
          expect(wrong).toBe(0)
        },
      ),
      { seed: 1125, numRuns: 25 },
    )
  })

  test('is mitred around a round outline to within its mitres', () => {
    expect(disagreements(round(90, 8), 1.2, 0).wrong).toBe(0)
  })

  test('passes over points that coincide', () => {
    const { points } = round(6, 8)
    const doubled = Float64Array.from([...points.subarray(0, 4), ...points.subarray(2)])
    const outline = { points: doubled, start: Int32Array.of(0, 7) }
    const grid = planGrid(1, -12, 12, 0, 1)
    const once = scanEdgeBand(round(6, 8), 1, grid).spans.slice()
    expect(once.length).toBeGreaterThan(100)
    expect(scanEdgeBand(outline, 1, grid).spans).toEqual(once)
  })
})
