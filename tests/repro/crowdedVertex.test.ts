import { expect, test } from 'vitest'
import { findBodies } from '../../src/core/mesh/bodies.ts'
import type { Mesh } from '../../src/core/model/mesh.ts'

/*
 * One facet half a million times puts a million sides on one vertex. Sorting them pair by pair took
 * seconds, and 200 MB of it more than ten.
 */
test('five times as many copies of one triangle take some five times as long to find', () => {
  const few = leastMsFor(100_000)
  const many = leastMsFor(500_000)
  // Linear work is 5 times as much, sorting some 6; pair by pair it would be 25.
  expect(many / few).toBeLessThan(14)
})

/** The least of three runs, in processor time: what else the machine does only ever adds to it. */
function leastMsFor(copies: number): number {
  return Math.min(...Array.from({ length: 3 }, () => msFor(copies)))
}

function msFor(copies: number): number {
  const mesh: Mesh = {
    positions: Float64Array.of(0, 0, 0, 1, 0, 0, 0, 1, 0),
    indices: Uint32Array.from({ length: 3 * copies }, (_, i) => i % 3),
  }
  const started = process.cpuUsage()
  const bodies = findBodies(mesh)
  const { user, system } = process.cpuUsage(started)
  expect(bodies.duplicates).toBe(copies - 1)
  return (user + system) / 1000
}
