import { describe, expect, it } from 'vitest'
import { findBodies } from '../../../src/core/mesh/bodies.ts'
import { joinBounds, sumBodies } from '../../../src/core/mesh/volume.ts'
import type { Mesh } from '../../../src/core/model/mesh.ts'
import { box, flip, merge, pickTriangles, translate, tube } from '../../support/meshes.ts'

const sums = (mesh: Mesh) => sumBodies(mesh, findBodies(mesh))

describe('sumBodies', () => {
  it('keeps bodies apart, with the sign of their facing', () => {
    const { volume, area, bounds } = sums(
      merge([box(1, 2, 3), flip(translate(box(2, 2, 2), [9, 9, 9]))]),
    )
    expect([...volume]).toEqual([6, -8])
    expect([...area]).toEqual([22, 24])
    expect([...bounds.subarray(6)]).toEqual([9, 9, 9, 11, 11, 11])
  })

  it('counts a small body fully beside a huge one and far away from it', () => {
    const { volume } = sums(merge([box(1e4, 1e4, 1e4), translate(box(1, 1, 1), [1e6, 0, 0])]))
    expect(volume[0]).toBe(1e12)
    expect(volume[1]).toBeCloseTo(1, 9)
  })

  it('reports how much of a body faces against its first triangle', () => {
    const cube = box(10, 10, 10)
    const mixed = pickTriangles(cube, ([a, b, c], t) => [t >= 9 ? [a, c, b] : [a, b, c]])
    const { turnedTriangles, turnedArea, volume } = sums(mixed)
    expect([turnedTriangles[0], turnedArea[0], volume[0]]).toEqual([3, 150, 1000])
  })

  it('closes each gap on its own: a tube without either ring', () => {
    const ringless = pickTriangles(tube(6, 4, 20, 48), (triangle) =>
      new Set(triangle.map((v) => v < 96)).size === 1 ? [] : [triangle],
    )
    const area = (r: number) => 24 * r * r * Math.sin((2 * Math.PI) / 48)
    const { volume } = sums(ringless)
    // Two skins are left: the outer one faces out, the inner one in.
    expect(volume[0]! + volume[1]!).toBeCloseTo(20 * (area(6) - area(4)), 9)
  })
})

describe('joinBounds', () => {
  it('is the box round all', () => {
    expect(
      joinBounds([
        { min: [0, 0, 0], max: [1, 5, 1] },
        { min: [-2, 1, 0], max: [0, 2, 9] },
      ]),
    ).toEqual({ min: [-2, 0, 0], max: [1, 5, 9] })
  })
})
