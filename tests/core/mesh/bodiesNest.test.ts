import { describe, expect, it } from 'vitest'
import { findBodies } from '../../../src/core/mesh/bodies.ts'
import { findHolders } from '../../../src/core/mesh/bodiesNest.ts'
import { sumBodies } from '../../../src/core/mesh/volume.ts'
import type { Mesh, Vec3 } from '../../../src/core/model/mesh.ts'
import { box, cone, flip, merge, rotate, sphere, translate } from '../../support/meshes.ts'
import { seededRandom } from '../../support/random.ts'

function holdersOf(meshes: readonly Mesh[]) {
  const mesh = merge(meshes)
  const bodies = findBodies(mesh)
  const sums = sumBodies(mesh, bodies)
  const holders = findHolders(mesh, bodies, sums, new Uint8Array(bodies.count).fill(1))
  return meshes.map((_, body) => [...(holders.get(body) ?? [])].toSorted((a, b) => a - b))
}

describe('findHolders', () => {
  it('finds every holder of nested boxes, whichever way they face, though all corners line up', () => {
    const nest = [1, 2, 3, 4].map((size) => {
      const cube = translate(box(size, size, size), [-size / 2, -size / 2, -size / 2])
      return size % 2 === 0 ? flip(cube) : cube
    })
    expect(holdersOf(nest)).toEqual([[1, 2, 3], [2, 3], [3], []])
  })

  it('takes bodies beside, above, across or around a hole for none', () => {
    const cube = box(4, 4, 4)
    expect(holdersOf([cube, translate(cube, [5, 0, 0])])).toEqual([[], []])
    expect(holdersOf([cube, translate(cube, [0, 0, 4])])).toEqual([[], []])
    expect(holdersOf([cube, translate(cube, [1, 1, 1])])).toEqual([[], []])
    // All sample points of the cone are inside; only its point sticks out.
    expect(holdersOf([cube, translate(cone(1, 3.5, 12), [2, 2, 1])])).toEqual([[], []])
    expect(holdersOf([cube, translate(cone(1, 2.5, 12), [2, 2, 1])])).toEqual([[], [0]])
  })

  it('agrees with distances between the middles of balls (seed 6)', () => {
    const random = seededRandom(6)
    const balls = Array.from({ length: 40 }, () => ({
      radius: 0.5 + 12 * random() ** 3,
      middle: [0, 0, 0].map(() => 16 * random() - 8) as unknown as Vec3,
    }))
    const meshes = balls.map(({ radius, middle }) =>
      translate(rotate(sphere(radius, 32), [360 * random(), 0, 0]), middle),
    )
    const found = holdersOf(meshes)
    const pairs = balls.flatMap((held, i) =>
      balls.flatMap((holder, j) => {
        const apart = Math.hypot(...held.middle.map((value, k) => value - holder.middle[k]!))
        // A faceted ball of 32 corners reaches inwards to cos(π/32)² of its radius.
        const surely = apart + held.radius < holder.radius * Math.cos(Math.PI / 32) ** 2
        const surelyNot = apart > held.radius + holder.radius
        const certain = i !== j && (surely || surelyNot)
        return certain ? [{ i, j, surely, found: found[i]!.includes(j) }] : []
      }),
    )
    expect(pairs.filter((pair) => pair.found !== pair.surely)).toEqual([])
    expect(pairs.filter((pair) => pair.surely).length).toBeGreaterThan(20)
  })
})
