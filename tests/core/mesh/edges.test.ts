import { describe, expect, it } from 'vitest'
import { sortSides } from '../../../src/core/mesh/edges.ts'
import { cone, meshOf, relabelVertices, shuffleTriangles, sphere } from '../../support/meshes.ts'
import type { Mesh } from '../../../src/core/model/mesh.ts'
import { seededRandom } from '../../support/random.ts'

/** The slow obvious way: every side under its two vertices, lower one first. */
function listed({ indices }: Mesh) {
  const sides: [lower: number, higher: number, side: number][] = []
  for (let side = 0; side < indices.length; side++) {
    const from = indices[side]!
    const to = indices[side % 3 === 2 ? side - 2 : side + 1]!
    sides.push([Math.min(from, to), Math.max(from, to), 2 * side + (from < to ? 1 : 0)])
  }
  return sides.toSorted((a, b) => a[0] - b[0] || a[1] - b[1] || a[2] - b[2])
}

function unrolled(mesh: Mesh) {
  const { starts, higher, sides } = sortSides(mesh)
  const rows: [number, number, number][] = []
  for (let vertex = 0; vertex + 1 < starts.length; vertex++) {
    for (let at = starts[vertex]!; at < starts[vertex + 1]!; at++) {
      rows.push([vertex, higher[at]!, sides[at]!])
    }
  }
  return rows
}

describe('sortSides', () => {
  it('puts the sides of one edge next to each other, in the order of the file (seed 3)', () => {
    const random = seededRandom(3)
    // A cone of 200 sides has a vertex with far more neighbours than the short sort takes.
    for (const mesh of [sphere(1, 16), cone(1, 1, 200)]) {
      const jumbled = relabelVertices(shuffleTriangles(mesh, random), random)
      expect(unrolled(jumbled)).toEqual(listed(jumbled))
    }
  })

  it('leaves out triangles that use a vertex twice', () => {
    const sorted = sortSides(
      meshOf(
        [
          [0, 0, 0],
          [1, 0, 0],
          [0, 1, 0],
        ],
        [0, 1, 2, 0, 0, 1, 2, 1, 2],
      ),
    )
    expect(sorted.collapsed).toBe(2)
    expect(sorted.sides).toHaveLength(3)
  })
})
