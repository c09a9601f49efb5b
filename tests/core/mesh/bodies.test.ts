import { describe, expect, it } from 'vitest'
import { findBodies, NO_BODY } from '../../../src/core/mesh/bodies.ts'
import { weldSoup } from '../../../src/core/model/weld.ts'
import {
  box,
  merge,
  pickTriangles,
  shuffleTriangles,
  soupOf,
  sphere,
  translate,
} from '../../support/meshes.ts'
import { seededRandom } from '../../support/random.ts'

const cube = box(10, 10, 10)
const rewelded = (mesh: Parameters<typeof soupOf>[0]) => weldSoup(soupOf(mesh))

describe('findBodies', () => {
  it('numbers bodies by their first triangle', () => {
    const { count, bodyOf } = findBodies(merge([cube, translate(cube, [20, 0, 0])]))
    expect(count).toBe(2)
    expect([...bodyOf]).toEqual([...Array<number>(12).fill(0), ...Array<number>(12).fill(1)])
  })

  it('joins across edges and not across corners', () => {
    const corner = rewelded(merge([cube, translate(cube, [10, 10, 10])]))
    expect(findBodies(corner)).toMatchObject({ count: 2, openEdges: 0, crowdedEdges: 0 })
    const edge = rewelded(merge([cube, translate(cube, [10, 10, 0])]))
    expect(findBodies(edge)).toMatchObject({ count: 2, openEdges: 0, crowdedEdges: 1 })
  })

  it('keeps boxes apart that share a whole face: four sides and the diagonal are crowded', () => {
    const stacked = rewelded(merge([cube, translate(cube, [0, 0, 10])]))
    expect(findBodies(stacked)).toMatchObject({ count: 2, crowdedEdges: 5, loose: [] })
  })

  it('says which triangles to turn, and counts the edges where they meet the others (seed 4)', () => {
    const random = seededRandom(4)
    const flipped = new Set<number>()
    const mesh = pickTriangles(shuffleTriangles(sphere(5, 24), random), ([a, b, c], t) => {
      if (random() < 0.6) return [[a, b, c]]
      flipped.add(t)
      return [[a, c, b]]
    })
    const { turned, sameWayEdges, contradictions, loose, count } = findBodies(mesh)
    expect({ count, contradictions, loose }).toEqual({ count: 1, contradictions: 0, loose: [] })
    expect(sameWayEdges).toBeGreaterThan(0)
    const first = flipped.has(0)
    expect([...turned].map((value) => value === 1)).toEqual(
      [...turned.keys()].map((t) => flipped.has(t) !== first),
    )
  })

  it('gives copies and collapsed triangles no body', () => {
    const { positions, indices } = cube
    const [a, b, c] = [indices[0]!, indices[1]!, indices[2]!]
    const mesh = { positions, indices: Uint32Array.from([...indices, b, c, a, a, a, b]) }
    const found = findBodies(mesh)
    expect([...found.bodyOf.subarray(12)]).toEqual([NO_BODY, NO_BODY])
    expect(found).toMatchObject({ count: 1, duplicates: 1, collapsed: 1, crowdedEdges: 0 })
  })

  it('marks triangles that lie back to back', () => {
    const stacked = rewelded(merge([cube, translate(cube, [0, 0, 10])]))
    const { backed } = findBodies(stacked)
    expect([...backed].filter((value) => value === 1)).toHaveLength(4)
  })

  it('lists the rim of a gap as loose sides', () => {
    const open = pickTriangles(cube, (triangle, t) => (t === 0 ? [] : [triangle]))
    expect(findBodies(open)).toMatchObject({ count: 1, openEdges: 3 })
    expect(findBodies(open).loose).toHaveLength(3)
  })
})
