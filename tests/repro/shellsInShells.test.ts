import { describe, expect, test } from 'vitest'
import { searchNest } from '../../src/core/mesh/bodiesNest.ts'
import { measureMesh } from '../../src/core/mesh/measure.ts'
import { takeApart } from '../../src/core/mesh/takeApart.ts'
import type { Mesh } from '../../src/core/model/mesh.ts'
import { crowd } from '../support/crowd.ts'
import { box, flip, merge, sphere, translate } from '../support/meshes.ts'

/*
 * Thousands of shells, each inside the next, made a first look take most of a minute: every pair of
 * them was kept in a map. Work is counted here in looks at points, which no machine changes.
 */
const ALL = 1e15

function nest(mesh: Mesh, most = ALL) {
  const { bodies, sums } = takeApart(mesh)
  const effort = { left: most }
  const heldBy = new Uint32Array(bodies.count)
  const solid = new Uint8Array(bodies.count).fill(1)
  const search = searchNest(mesh, bodies, sums, solid)
  search.eachHeld(effort, (held) => heldBy[held]!++)
  return { looks: most - effort.left, told: search.looks, heldBy: [...heldBy] }
}

const shells = (count: number, corners: number): Mesh =>
  merge(Array.from({ length: count }, (_, i) => sphere(1 + i * 0.05, corners)))

const tiles = (side: number): Mesh =>
  merge(
    Array.from({ length: side * side }, (_, i) =>
      translate(box(3, 3, 3), [4 * (i % side), 4 * Math.floor(i / side), 0]),
    ),
  )

describe('bodies in bodies', () => {
  test('each of 300 shells is held by all that are larger, few looks a pair', () => {
    const { looks, heldBy } = nest(shells(300, 16))
    expect(heldBy).toEqual(Array.from({ length: 300 }, (_, i) => 299 - i))
    // Three rays a pair, and what else lies in the cells below a triangle.
    expect(looks / ((300 * 299) / 2)).toBeLessThan(100)
  })

  test('four times as many bodies side by side take some four times as many looks', () => {
    const [few, many] = [nest(tiles(25)), nest(tiles(50))]
    expect(many.heldBy.every((count) => count === 0)).toBe(true)
    expect(many.looks / few.looks).toBeLessThan(5)
  })

  test.each([
    ['shells', shells(100, 16)],
    ['tiles', tiles(20)],
    ['bodies that cut one another', crowd(300, 6, 20)],
  ])('of %s the looks of a whole search are told before it', (_, mesh) => {
    const { looks, told } = nest(mesh)
    expect(looks).toBeGreaterThan(1000)
    expect(told).toBe(looks)
  })

  test('the search ends within the looks it may take, and by a triangle more at most', () => {
    const most = 20_000
    const { looks, heldBy } = nest(shells(300, 16), most)
    expect(looks).toBeGreaterThan(most)
    expect(looks).toBeLessThan(most + 3 * 300)
    expect(heldBy.reduce((sum, count) => sum + count, 0)).toBeLessThan((300 * 299) / 2)
  })

  test('shells that are all looked at are told apart, hollows among them', () => {
    const { findings, volumeMm3 } = measureMesh(merge([sphere(9, 16), flip(sphere(5, 16))]), 1)
    expect(findings.map(({ code }) => code)).toEqual(['cavity'])
    const { volumeMm3: whole } = measureMesh(sphere(9, 16), 1)
    const { volumeMm3: hollow } = measureMesh(sphere(5, 16), 1)
    expect(volumeMm3).toBeCloseTo(whole - hollow, 6)
  })

  test('of 6,000 shells each inside the next every hollow is found', () => {
    const hollows = Array.from({ length: 6000 }, (_, i) => {
      const shell = sphere(1 + i * 0.05, 6)
      return i % 2 === 0 ? flip(shell) : shell
    })
    const { findings, volumeMm3 } = measureMesh(merge(hollows), 1)
    expect(findings.map(({ code }) => code)).not.toContain('unknown-nest')
    const { volumeMm3: one } = measureMesh(sphere(1, 6), 1)
    // The shell of radius r holds r³ of the first; every other one is taken off.
    const cubes = hollows.map((_, i) => (i % 2 === 0 ? -1 : 1) * (1 + i * 0.05) ** 3)
    const expected = one * cubes.reduce((sum, cube) => sum + cube, 0)
    expect(volumeMm3 / expected).toBeCloseTo(1, 9)
  })

  test('of too many that cut one another it is said that hollows may count as solid', () => {
    const askew = Array.from({ length: 6000 }, (_, i) =>
      translate(sphere(1 + i * 0.05, 6), [i % 2 === 0 ? 0 : 0.3, 0, 0]),
    )
    const { findings } = measureMesh(merge(askew), 1)
    expect(findings.find(({ code }) => code === 'unknown-nest')).toMatchObject({
      grade: 'changes the grams',
      message: expect.stringContaining('6,000 bodies'),
    })
  })
})
