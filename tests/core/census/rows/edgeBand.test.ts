import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { BandSide } from '../../../../src/core/census/rows/edgeBand.ts'
import { scanEdgeBand } from '../../../../src/core/census/rows/edgeBand.ts'
import { planGrid, scanOutline } from '../../../../src/core/census/rows/scanGrid.ts'
import type { RowSet } from '../../../../src/core/census/rows/rowSet.ts'
import type { Outline } from '../../../../src/core/census/cut/simplify.ts'

/*
 * The slow obvious way: the distance from a place to every edge. Places are tried all along every
 * row; those closer to a boundary of the band than mitres and the step of the trial allow decide
 * nothing.
 */
const STEP_MM = 0.05
const SLACK_MM = 0.004

/** A star-shaped polygon, corners and hollows of any sharpness, counterclockwise. */
const star = fc
  .array(
    fc.tuple(
      fc.double({ min: 2, max: 9, noNaN: true }),
      fc.double({ min: 0.2, max: 1, noNaN: true }),
    ),
    {
      minLength: 4,
      maxLength: 24,
    },
  )
  .map((rays): Outline => {
    const whole = rays.reduce((sum, [, share]) => sum + share, 0)
    let angle = 0
    const points = rays.flatMap(([radius, share]) => {
      angle += (share / whole) * 2 * Math.PI
      return [radius * Math.cos(angle), radius * Math.sin(angle)]
    })
    return { points: Float64Array.from(points), start: Int32Array.of(0, rays.length) }
  })

const round = (sides: number, radius: number): Outline => ({
  points: Float64Array.from({ length: 2 * sides }, (_, i) => {
    const angle = (2 * Math.PI * (i >> 1)) / sides
    return radius * (i % 2 === 0 ? Math.cos(angle) : Math.sin(angle))
  }),
  start: Int32Array.of(0, sides),
})

function distanceMm({ points }: Outline, u: number, v: number): number {
  let least = Infinity
  const count = points.length / 2
  for (let i = 0; i < count; i++) {
    const j = (i + 1) % count
    const du = points[2 * j]! - points[2 * i]!
    const dv = points[2 * j + 1]! - points[2 * i + 1]!
    const along = ((u - points[2 * i]!) * du + (v - points[2 * i + 1]!) * dv) / (du * du + dv * dv)
    const t = Math.min(1, Math.max(0, along))
    least = Math.min(
      least,
      Math.hypot(u - points[2 * i]! - t * du, v - points[2 * i + 1]! - t * dv),
    )
  }
  return least
}

function holds({ start, spans }: RowSet, row: number, at: number): boolean {
  for (let i = start[row]!; i < start[row + 1]!; i++) {
    if (spans[2 * i]! <= at && at <= spans[2 * i + 1]!) return true
  }
  return false
}

/** Number of places on the asked side, and of those where the band disagrees with the distance. */
function disagreements(outline: Outline, radiusMm: number, side: BandSide, along: 0 | 1) {
  const grid = planGrid(along, -12, 12, 0, 1)
  const region = scanOutline(outline, grid).region
  const band = scanEdgeBand(outline, radiusMm, grid, side)
  let tried = 0
  let wrong = 0
  for (let row = 0; row < grid.rows; row++) {
    const across = grid.originMm + (row + 0.5) * grid.pitchMm
    for (let at = -12; at < 12; at += STEP_MM) {
      const [u, v] = along === 0 ? [at, across] : [across, at]
      const inside = holds(region, row, at)
      if (side !== 'both' && inside !== (side === 'inside')) continue
      const mm = distanceMm(outline, u, v)
      if (mm < SLACK_MM || Math.abs(mm - radiusMm) < SLACK_MM) continue
      tried++
      if (holds(band, row, at) !== mm < radiusMm) wrong++
    }
  }
  return { tried, wrong }
}

describe('the band along an outline', () => {
  test.each(['inside', 'outside', 'both'] as const)(
    'holds what is near on the %s, and nothing that is far there',
    (side) => {
      fc.assert(
        fc.property(
          star,
          fc.double({ min: 0.1, max: 2.5, noNaN: true }),
          fc.constantFrom<(0 | 1)[]>(0, 1),
          (outline, radiusMm, along) => {
            const { tried, wrong } = disagreements(outline, radiusMm, side, along)
            expect(tried).toBeGreaterThan(100)
            expect(wrong).toBe(0)
          },
        ),
        { seed: 1125, numRuns: 25 },
      )
    },
  )

  test('is mitred around a round outline to within its mitres', () => {
    for (const side of ['inside', 'outside'] as const) {
      expect(disagreements(round(90, 8), 1.2, side, 0).wrong).toBe(0)
    }
  })

  test('passes over points that coincide', () => {
    const { points } = round(6, 8)
    const doubled = Float64Array.from([...points.subarray(0, 4), ...points.subarray(2)])
    const outline = { points: doubled, start: Int32Array.of(0, 7) }
    const grid = planGrid(1, -12, 12, 0, 1)
    const once = scanEdgeBand(round(6, 8), 1, grid, 'outside').spans.slice()
    expect(once.length).toBeGreaterThan(100)
    expect(scanEdgeBand(outline, 1, grid, 'outside').spans).toEqual(once)
  })
})
