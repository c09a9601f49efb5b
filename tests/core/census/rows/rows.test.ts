import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  intersectAll,
  sharedLengthMm,
  subtractRows,
  uniteRows,
} from '../../../../src/core/census/rows/rowAlgebra.ts'
import type { RowSet } from '../../../../src/core/census/rows/rowSet.ts'
import { measureBoundary, separatePieces } from '../../../../src/core/census/areas/rooms.ts'

/** The obvious way: a region is a set of cells of a small board. */
const SIDE = 12
type Board = readonly boolean[][]

const board = fc.array(fc.array(fc.boolean(), { minLength: SIDE, maxLength: SIDE }), {
  minLength: SIDE,
  maxLength: SIDE,
})

function toRows(cells: Board): RowSet {
  const spans: number[] = []
  const start = [0]
  for (const row of cells) {
    row.forEach((on, x) => {
      if (!on) return
      if (row[x - 1]) spans[spans.length - 1] = x + 1
      else spans.push(x, x + 1)
    })
    start.push(spans.length / 2)
  }
  return { start: Int32Array.from(start), spans: Float64Array.from(spans) }
}

function toBoard(region: RowSet): Board {
  return Array.from({ length: SIDE }, (_, row) =>
    Array.from({ length: SIDE }, (_cell, x) => {
      for (let i = region.start[row]!; i < region.start[row + 1]!; i++) {
        if (region.spans[2 * i]! <= x && x + 1 <= region.spans[2 * i + 1]!) return true
      }
      return false
    }),
  )
}

const combine = (a: Board, b: Board, how: (p: boolean, q: boolean) => boolean): Board =>
  a.map((row, y) => row.map((on, x) => how(on, b[y]![x]!)))

const options = { seed: 20261125, numRuns: 300 }

describe('row algebra equals cell by cell logic', () => {
  test('intersection, difference and union', () => {
    fc.assert(
      fc.property(board, board, (a, b) => {
        const [rowsA, rowsB] = [toRows(a), toRows(b)]
        expect(toBoard(intersectAll(rowsA, [rowsB]))).toEqual(combine(a, b, (p, q) => p && q))
        expect(sharedLengthMm(rowsA, rowsB)).toBe(
          combine(a, b, (p, q) => p && q)
            .flat()
            .filter(Boolean).length,
        )
        expect(toBoard(subtractRows(rowsA, rowsB))).toEqual(combine(a, b, (p, q) => p && !q))
        expect(toBoard(uniteRows(rowsA, rowsB))).toEqual(combine(a, b, (p, q) => p || q))
      }),
      options,
    )
  })

  test('pieces are the flood fills of the board', () => {
    fc.assert(
      fc.property(board, (cells) => {
        const sizes = floodSizes(cells)
        const pieces = separatePieces(toRows(cells))
        expect([...pieces.rowLengthMm].sort((a, b) => a - b)).toEqual(sizes)
      }),
      options,
    )
  })

  test('the projected boundary is the count of left and right cell edges', () => {
    fc.assert(
      fc.property(board, (cells) => {
        let edges = 0
        for (const row of cells) {
          for (let x = 0; x <= SIDE; x++) if ((row[x - 1] ?? false) !== (row[x] ?? false)) edges++
        }
        const region = toRows(cells)
        expect(measureBoundary(region, 1).seenMm).toBe(edges)
        expect(measureBoundary(region, 1).walkMm).toBeGreaterThanOrEqual(edges)
      }),
      options,
    )
  })
})

function floodSizes(cells: Board): number[] {
  const seen = cells.map((row) => row.map(() => false))
  const sizes: number[] = []
  const fill = (x: number, y: number): number => {
    if (!cells[y]?.[x] || seen[y]![x]) return 0
    seen[y]![x] = true
    return 1 + fill(x + 1, y) + fill(x - 1, y) + fill(x, y + 1) + fill(x, y - 1)
  }
  cells.forEach((row, y) =>
    row.forEach((_, x) => {
      const size = fill(x, y)
      if (size > 0) sizes.push(size)
    }),
  )
  return sizes.sort((a, b) => a - b)
}
