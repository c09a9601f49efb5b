import { expect, test } from 'vitest'
import { censusOf, relative } from '../support/censusCase.ts'
import { box, pickTriangles } from '../support/meshes.ts'

/*
 * A block that lacks two opposite sides: in each layer the two walls left are as far from each
 * other as each is long. Each was closed on itself, enclosed nothing, and the part was refused as
 * one without an inside.
 */
test('two walls that face each other are joined, not each closed on itself', () => {
  const whole = box(20, 20, 20)
  const walls = pickTriangles(whole, (triangle) => {
    const xs = triangle.map((corner) => whole.positions[3 * corner]!)
    return xs.every((x) => x === xs[0]) ? [] : [triangle]
  })
  const census = censusOf(walls)
  expect(relative(census.modelMm3, 8000)).toBeLessThan(0.003)
  expect(census.doubtfulShare).toBeCloseTo(0.5, 2)
})
