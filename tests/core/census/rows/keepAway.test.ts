import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { keepAway } from '../../../../src/core/census/rows/keepAway.ts'
import type { RowSet } from '../../../../src/core/census/rows/rowSet.ts'
import type { ScanGrid } from '../../../../src/core/census/rows/scanGrid.ts'
import { holds } from '../../../support/outlines.ts'

const ROWS = 40
const WIDE_MM = 20
const STEP_MM = 0.11

/** Stretches on every row, in order and apart; many rows have none. */
const region = fc
  .array(
    fc.oneof(
      fc.constant([]),
      fc.array(fc.double({ min: 0.05, max: 6, noNaN: true }), { minLength: 2, maxLength: 10 }),
    ),
    { minLength: ROWS, maxLength: ROWS },
  )
  .map((rows): RowSet => {
    const start = [0]
    const spans: number[] = []
    for (const widths of rows) {
      let at = 0
      const ends = widths.map((mm) => (at += mm))
      spans.push(...ends.slice(0, 2 * Math.floor(ends.length / 2)))
      start.push(spans.length / 2)
    }
    return { start: Int32Array.from(start), spans: Float64Array.from(spans) }
  })

/** The slow obvious way: from a place on one row to the nearest stretch on any. mm */
function awayMm({ start, spans }: RowSet, row: number, at: number, pitchMm: number): number {
  let least2 = Infinity
  for (let other = 0; other < ROWS; other++) {
    const across = (other - row) * pitchMm
    for (let i = start[other]!; i < start[other + 1]!; i++) {
      const beside = Math.max(0, spans[2 * i]! - at, at - spans[2 * i + 1]!)
      least2 = Math.min(least2, beside * beside + across * across)
    }
  }
  return Math.sqrt(least2)
}

/**
 * Places of a region kept though they are nearer than `nearMm`, and dropped though further than
 * `farMm`.
 */
function wrongPlaces(
  own: RowSet,
  other: RowSet,
  radiusMm: number,
  pitchMm: number,
  [nearMm, farMm]: readonly [number, number],
): number {
  const grid: ScanGrid = { along: 0, rows: ROWS, pitchMm, originMm: 0 }
  const kept = keepAway(own, other, radiusMm, grid)
  let wrong = 0
  for (let row = 0; row < ROWS; row++) {
    for (let at = 0; at < WIDE_MM; at += STEP_MM) {
      const isKept = holds(kept, row, at)
      const mm = holds(own, row, at) ? awayMm(other, row, at, pitchMm) : 0
      if (isKept ? mm < nearMm : mm > farMm) wrong++
    }
  }
  return wrong
}

describe('what of a region keeps away from another', () => {
  test('is what no row has near, where rows are taken one by one', () => {
    const radius = fc.double({ min: 0.2, max: 4.5, noNaN: true })
    fc.assert(
      fc.property(region, region, radius, (own, other, mm) => {
        expect(wrongPlaces(own, other, mm, 0.3, [mm - 1e-9, mm + 1e-9])).toBe(0)
      }),
      { seed: 1127, numRuns: 25 },
    )
  })

  test('is that to within half a block, where rows are taken by blocks', () => {
    // A radius of 24 to 31 rows, in blocks of three: half a block is one row.
    const radius = fc.double({ min: 2.4, max: 3.1, noNaN: true })
    fc.assert(
      fc.property(region, region, radius, (own, other, mm) => {
        expect(wrongPlaces(own, other, mm, 0.1, [mm - 0.1 - 1e-9, mm + 0.1 + 1e-9])).toBe(0)
      }),
      { seed: 1128, numRuns: 25 },
    )
  })

  test('is all of it where there is nothing to keep away from', () => {
    fc.assert(
      fc.property(region, (own) => {
        const grid: ScanGrid = { along: 0, rows: ROWS, pitchMm: 0.3, originMm: 0 }
        const nothing = { start: new Int32Array(ROWS + 1), spans: new Float64Array(0) }
        expect(keepAway(own, nothing, 2, grid)).toBe(own)
      }),
      { seed: 1129, numRuns: 10 },
    )
  })
})
