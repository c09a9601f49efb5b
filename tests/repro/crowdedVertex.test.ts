import { expect, test } from 'vitest'
import { findBodies } from '../../src/core/mesh/bodies.ts'
import type { Mesh } from '../../src/core/model/mesh.ts'

/*
 * One facet half a million times puts a million sides on one vertex. Sorting them pair by pair took seconds, and 200 MB of it
 * more than ten.
 */
test('half a million copies of one triangle are found in no time', () => {
  const copies = 500_000
  const mesh: Mesh = {
    positions: Float64Array.of(0, 0, 0, 1, 0, 0, 0, 1, 0),
    indices: Uint32Array.from({ length: 3 * copies }, (_, i) => i % 3),
  }
  const started = process.cpuUsage()
  const bodies = findBodies(mesh)
  const { user, system } = process.cpuUsage(started)
  expect(bodies.duplicates).toBe(copies - 1)
  expect((user + system) / 1000).toBeLessThan(2000)
})
