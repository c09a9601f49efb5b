import { expect, test } from 'vitest'
import type { Outline } from '../../src/core/census/cut/simplify.ts'
import { scanEdgeBand } from '../../src/core/census/rows/edgeBand.ts'
import { uniteRows } from '../../src/core/census/rows/rowAlgebra.ts'
import { emptyRows } from '../../src/core/census/rows/rowSet.ts'
import { planGrid } from '../../src/core/census/rows/scanGrid.ts'

/*
 * A sliver that no row meets, grown by a depth, was the band along its edges itself: memory that the
 * next band is written to, kept with the layer as what it had been grown to.
 */
const square = (half: number): Outline => ({
  points: Float64Array.of(-half, -half, half, -half, half, half, -half, half),
  start: Int32Array.of(0, 4),
})

test('what nothing grew to is still the same after the next band', () => {
  const grid = planGrid(0, -12, 12, 0, 1)
  const grown = uniteRows(emptyRows(grid.rows), scanEdgeBand(square(2), 0.5, grid))
  const before = [...grown.spans]
  scanEdgeBand(square(7), 1.5, grid)
  expect(before.length).toBeGreaterThan(0)
  expect([...grown.spans]).toEqual(before)
})
