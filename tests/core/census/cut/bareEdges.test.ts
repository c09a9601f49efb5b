import fc from 'fast-check'
import Module from 'manifold-3d'
import { expect, test } from 'vitest'
import { bareEdges } from '../../../../src/core/census/cut/bareEdges.ts'
import type { Outline } from '../../../../src/core/census/cut/simplify.ts'
import { planGrid, scanOutline } from '../../../../src/core/census/rows/scanGrid.ts'
import { star } from '../../../support/outlines.ts'

const wasm = await Module()
wasm.setup()

const GRIDS = [planGrid(0, -25, 25, 0, 0.4), planGrid(1, -25, 25, 0, 0.4)] as const

function pointsOf({ points }: Outline): [number, number][] {
  return Array.from({ length: points.length / 2 }, (_, i) => [points[2 * i]!, points[2 * i + 1]!])
}

function together(outlines: readonly Outline[]): Outline {
  const start = [0]
  for (const { points } of outlines) start.push(start.at(-1)! + points.length / 2)
  return {
    points: Float64Array.from(outlines.flatMap(({ points }) => [...points])),
    start: Int32Array.from(start),
  }
}

function lengthMm(contour: readonly (readonly number[])[]): number {
  return contour.reduce((sum, [u, v], i) => {
    const [nextU, nextV] = contour[(i + 1) % contour.length]!
    return sum + Math.hypot(nextU! - u!, nextV! - v!)
  }, 0)
}

function bareOf(outline: Outline) {
  return bareEdges(outline, [scanOutline(outline, GRIDS[0]), scanOutline(outline, GRIDS[1])], GRIDS)
}

test('as much bounds the solid as the union by manifold-3d has outline', () => {
  const placed = fc.tuple(
    star,
    fc.double({ min: -9, max: 9, noNaN: true }),
    fc.double({ min: -9, max: 9, noNaN: true }),
  )
  const moved = ([{ points, start }, u, v]: [Outline, number, number]): Outline => ({
    points: points.map((value, i) => value + (i % 2 === 0 ? u : v)),
    start,
  })
  let [isMm, shouldMm] = [0, 0]
  fc.assert(
    fc.property(fc.array(placed, { minLength: 2, maxLength: 6 }), (shapes) => {
      const stars = shapes.map(moved)
      const outline = together(stars)
      const union = wasm.CrossSection.union(
        stars.map((one) => new wasm.CrossSection([pointsOf(one)], 'NonZero')),
      )
      const wantedMm = union.toPolygons().reduce((sum, contour) => sum + lengthMm(contour), 0)
      const { outline: left, hiddenMm } = bareOf(outline)
      let leftMm = 0
      for (let c = 0; c + 1 < left.start.length; c++) {
        leftMm += lengthMm(pointsOf(left).slice(left.start[c], left.start[c + 1]))
      }
      isMm += leftMm - hiddenMm
      shouldMm += wantedMm
      // Each crossing of two outlines is told within half a row, on an edge that crosses rows at
      // 45° or more.
      const corners = outline.points.length / 2 + union.numVert()
      expect(Math.abs(leftMm - hiddenMm - wantedMm)).toBeLessThan(0.1 * Math.SQRT2 * corners)
    }),
    { seed: 1127, numRuns: 150 },
  )
  // Half rows too much and too little come out even.
  expect(Math.abs(isMm / shouldMm - 1)).toBeLessThan(0.005)
})

test('an outline that no body hides is handed back as it is; a hidden contour is left out', () => {
  const square = (at: number, side: number): Outline => ({
    points: Float64Array.of(at, at, at + side, at, at + side, at + side, at, at + side),
    start: Int32Array.of(0, 4),
  })
  const apart = together([square(0, 5), square(10, 5)])
  expect(bareOf(apart)).toEqual({ outline: apart, edges: { ...apart, closed: 2 }, hiddenMm: 0 })
  const inside = together([square(0, 10), square(3, 2), square(4, 0.01)])
  expect(bareOf(inside).outline).toEqual(square(0, 10))
  expect(bareOf(inside).edges).toEqual({ ...square(0, 10), closed: 1 })
})
