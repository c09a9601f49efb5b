import { describe, expect, it } from 'vitest'
import { measureLines } from '../../../../src/core/census/moves/lines.ts'
import { planGrid, SCAN_TILT_DEG, scanOutline } from '../../../../src/core/census/rows/scanGrid.ts'
import { straighten } from '../../../../src/core/census/cut/straighten.ts'
import { zigzagEnds } from '../../../../src/core/census/moves/zigzags.ts'

const TILT = (SCAN_TILT_DEG * Math.PI) / 180

/** A region of contours given in x and y, scanned in the askew frame. */
function scan(along: 0 | 1, contours: readonly (readonly (readonly [number, number])[])[]) {
  const points = contours
    .flat()
    .flatMap(([x, y]) => [
      x * Math.cos(TILT) + y * Math.sin(TILT),
      y * Math.cos(TILT) - x * Math.sin(TILT),
    ])
  const start = [0]
  for (const contour of contours) start.push(start.at(-1)! + contour.length)
  const grid = planGrid(along, -30, 80, 0, 0.4)
  const outline = { points: Float64Array.from(points), start: Int32Array.from(start) }
  return { grid, region: scanOutline(outline, grid).region }
}

const rectangle = (x: number, y: number, w: number, d: number) =>
  [
    [x, y],
    [x + w, y],
    [x + w, y + d],
    [x, y + d],
  ] as const

describe('lines laid straight through askew rows', () => {
  it.each([
    [0, 40, 25],
    [1, 10, 100],
  ] as const)('along %s fill a 40 × 10 mm rectangle from side to side', (along, mm, count) => {
    const { grid, region } = scan(along, [rectangle(3, 2, 40, 10)])
    const { rows, lowMm } = straighten(region, grid, 0.4)
    expect(rows.spans.length / 2).toBe(count)
    expect(Math.abs(lowMm - (along === 0 ? 2 : 3))).toBeLessThan(grid.pitchMm)
    for (let i = 0; i < rows.spans.length; i += 2) {
      expect(Math.abs(rows.spans[i + 1]! - rows.spans[i]! - mm)).toBeLessThan(2 * grid.pitchMm)
    }
  })

  it('stand for the region’s area, whatever falls between them', () => {
    const { grid, region } = scan(0, [rectangle(0, 0, 30, 5.3)])
    const { tally } = measureLines(region, grid, 0.4, [1])
    const area = tally.weightedMm.reduce((sum, mm2) => sum + mm2, 0)
    expect(Math.abs(area / (30 * 5.3) - 1)).toBeLessThan(0.01)
  })
})

describe('zigzags', () => {
  it('go through a rectangle in one, from corner to corner, from either side', () => {
    const { grid, region } = scan(0, [rectangle(0, 0, 40, 10)])
    const lines = straighten(region, grid, 0.4)
    for (const high of [false, true]) {
      const ends = zigzagEnds(lines, 1, high)
      expect(ends).toHaveLength(4)
      expect(ends[0]).toBeCloseTo(high ? 39.8 : 0.2, 0)
      expect(ends[1]).toBeCloseTo(0.2, 0)
      expect(ends[3]).toBeCloseTo(9.8, 0)
    }
  })

  it('lie as well along y', () => {
    const { grid, region } = scan(1, [rectangle(0, 0, 40, 10)])
    const ends = zigzagEnds(straighten(region, grid, 0.4), 1, false)
    expect(ends).toHaveLength(4)
    expect(Math.min(ends[0]!, ends[2]!)).toBeCloseTo(0.2, 0)
    expect(Math.max(ends[0]!, ends[2]!)).toBeCloseTo(39.8, 0)
  })

  it('begin anew around an opening', () => {
    const { grid, region } = scan(0, [
      rectangle(0, 0, 40, 30),
      rectangle(12, 10, 16, 10).toReversed(),
    ])
    const lines = straighten(region, grid, 0.4)
    const fewest = Math.min(...[false, true].map((high) => zigzagEnds(lines, 1, high).length / 4))
    expect(fewest).toBeGreaterThanOrEqual(2)
    expect(fewest).toBeLessThanOrEqual(4)
  })

  it('are none in nothing', () => {
    const { grid, region } = scan(0, [])
    expect(zigzagEnds(straighten(region, grid, 0.4), 1, false)).toHaveLength(0)
  })
})
