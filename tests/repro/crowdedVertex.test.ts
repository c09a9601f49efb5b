import { expect, onTestFinished, test, vi } from 'vitest'
import type { Mesh } from '../../src/core/model/mesh.ts'
import { startCounter } from '../support/countedRuns.ts'

/*
 * One facet half a million times puts a million sides on one vertex. Sorting them pair by pair took
 * seconds, and 200 MB of it more than ten.
 */
test('five times as many copies of one triangle are some five times the work to find', async () => {
  vi.resetModules()
  const counter = startCounter()
  onTestFinished(counter.stop)
  const { findBodies } = await import('../../src/core/mesh/bodies.ts')
  const find = (copies: number) =>
    counter.runsOf(() => {
      expect(findBodies(copiesOfOne(copies)).duplicates).toBe(copies - 1)
    })
  const few = find(2000)
  const many = find(10_000)
  // Loops are seen, not calls alone.
  expect(few.most).toBeGreaterThan(2000)
  // Linear work is 5 times as much, sorting some 6; pair by pair it was 25.
  expect(many.most / few.most).toBeLessThan(8)
  expect(many.all / few.all).toBeLessThan(8)
})

function copiesOfOne(copies: number): Mesh {
  return {
    positions: Float64Array.of(0, 0, 0, 1, 0, 0, 0, 1, 0),
    indices: Uint32Array.from({ length: 3 * copies }, (_, i) => i % 3),
  }
}
