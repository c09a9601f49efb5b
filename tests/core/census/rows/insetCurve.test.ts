import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { insetCurve } from '../../../../src/core/census/rows/insetCurve.ts'
import { planGrid, scanOutline, scanPositive } from '../../../../src/core/census/rows/scanGrid.ts'
import type { Outline } from '../../../../src/core/census/cut/simplify.ts'
import { distanceMm, holds, round, star } from '../../../support/outlines.ts'

/*
 * The slow obvious way: the distance from a place to every edge. Places are tried all along every
 * row; those closer to the curve than mitres and the step of the trial allow decide nothing.
 */
const STEP_MM = 0.05
const SLACK_MM = 0.004

/** Number of places tried, and of those on the wrong side of the curve. */
function disagreements(outline: Outline, depthMm: number, along: 0 | 1) {
  const grid = planGrid(along, -13, 13, 0, 1)
  const own = scanOutline(outline, grid).region
  const deeper = scanPositive(insetCurve(outline, depthMm), grid)
  let tried = 0
  let wrong = 0
  for (let row = 0; row < grid.rows; row++) {
    const across = grid.originMm + (row + 0.5) * grid.pitchMm
    for (let at = -13; at < 13; at += STEP_MM) {
      const [u, v] = along === 0 ? [at, across] : [across, at]
      const away = distanceMm(outline, u, v)
      if (away < SLACK_MM || Math.abs(away - Math.abs(depthMm)) < SLACK_MM) continue
      const depth = holds(own, row, at) ? away : -away
      tried++
      if (holds(deeper, row, at) !== depth > depthMm) wrong++
    }
  }
  return { tried, wrong }
}

const turned = ({ points, start }: Outline): number[] => {
  const places = Array.from({ length: start[1]! }, (_, i) => [points[2 * i]!, points[2 * i + 1]!])
  return places.toReversed().flat()
}

/** An outline with another as a hole in it. */
const withHole = (outer: Outline, hole: Outline): Outline => ({
  points: Float64Array.from([...outer.points, ...turned(hole)]),
  start: Int32Array.of(0, outer.start[1]!, outer.start[1]! + hole.start[1]!),
})

const depth = fc.double({ min: -2.5, max: 2.5, noNaN: true }).filter((mm) => Math.abs(mm) > 0.05)
const along = fc.constantFrom<(0 | 1)[]>(0, 1)

describe('the curve some way inside or outside an outline', () => {
  test('winds around what is deeper, and around nothing else', () => {
    fc.assert(
      fc.property(star, depth, along, (outline, depthMm, axis) => {
        const { tried, wrong } = disagreements(outline, depthMm, axis)
        expect(tried).toBeGreaterThan(100)
        expect(wrong).toBe(0)
      }),
      { seed: 1125, numRuns: 50 },
    )
  })

  test('does so beside holes of any size', () => {
    const radius = fc.double({ min: 0.2, max: 7, noNaN: true })
    const sides = fc.integer({ min: 3, max: 80 })
    fc.assert(
      fc.property(radius, sides, depth, along, (radiusMm, count, depthMm, axis) => {
        const outline = withHole(round(90, 9), round(count, radiusMm))
        expect(disagreements(outline, depthMm, axis).wrong).toBe(0)
      }),
      { seed: 1126, numRuns: 30 },
    )
  })

  test.each([0.3, 1, 1.9, 2.1, 5])('leaves of a disc of 2 mm what is deeper than %s', (depthMm) => {
    for (const count of [12, 60, 240]) {
      expect(disagreements(round(count, 2), depthMm, 0).wrong).toBe(0)
    }
  })

  test('goes round a needle without thickness', () => {
    const needle: Outline = {
      points: Float64Array.of(-5, -5, 5, -5, 5, 0, 9, 0, 5, 0, 5, 5, -5, 5),
      start: Int32Array.of(0, 7),
    }
    for (const depthMm of [-1.5, 1.5]) expect(disagreements(needle, depthMm, 0).wrong).toBe(0)
  })

  test('passes over points that coincide', () => {
    const { points } = round(6, 8)
    const doubled = Float64Array.from([...points.subarray(0, 4), ...points.subarray(2)])
    const once = insetCurve(round(6, 8), -1).points.slice()
    expect(once.length).toBeGreaterThan(20)
    expect(insetCurve({ points: doubled, start: Int32Array.of(0, 7) }, -1).points).toEqual(once)
  })
})
