import Module from 'manifold-3d'
import { describe, expect, test } from 'vitest'
import { countAllLayers } from '../../src/core/census/countAllLayers.ts'
import { placeMesh } from '../../src/core/mesh/pose.ts'
import type { Mesh } from '../../src/core/model/mesh.ts'
import { POSE_AS_DRAWN, RECIPE_DEFAULTS } from '../../src/core/model/settings.ts'
import { box, merge, translate } from '../support/meshes.ts'
import { seededRandom } from '../support/random.ts'

// Bodies that reach into one another were one solid in area, but walls were laid along what of
// each lies inside of the others: two blocks that make a bar weighed 9 % more than the bar, and
// 21 of them 85 % more, far beyond the range.

const wasm = await Module()
wasm.setup()

function plasticMm3(mesh: Mesh) {
  const { layers } = countAllLayers(placeMesh(mesh, 1, POSE_AS_DRAWN), RECIPE_DEFAULTS)
  const sum = (mm2: Float64Array): number =>
    mm2.reduce((all, one, i) => all + one * layers.heightMm[i]!, 0)
  return { wall: sum(layers.wallMm2), skin: sum(layers.skinMm2), room: sum(layers.roomMm2) }
}

function expectSame(drawn: Mesh, joined: Mesh, share: number): void {
  const [is, should] = [plasticMm3(drawn), plasticMm3(joined)]
  const all = should.wall + should.skin + should.room
  for (const key of ['wall', 'skin', 'room'] as const) {
    expect(Math.abs(is[key] - should[key]) / all, key).toBeLessThan(share)
  }
}

describe('bodies that reach into one another', () => {
  test.each([2, 21])('%s blocks that make a bar are counted as the bar', (count) => {
    const step = 20 / (count - 1)
    const blocks = Array.from({ length: count }, (_, i) =>
      translate(box(40, 20, 20), [step * i, 0, 0]),
    )
    expectSame(merge(blocks), box(60, 20, 20), 0.0005)
  })

  test('turned boxes are counted as their union by manifold-3d', () => {
    for (const seed of [1, 2, 3]) {
      const random = seededRandom(seed)
      const boxes = Array.from({ length: 12 }, () =>
        wasm.Manifold.cube([6 + 20 * random(), 6 + 20 * random(), 4 + 12 * random()], true)
          .rotate([360 * random(), 360 * random(), 360 * random()])
          .translate([30 * random(), 30 * random(), 15 * random()]),
      )
      // Where two outlines cross it is told within half a row.
      expectSame(merge(boxes.map(meshFrom)), meshFrom(wasm.Manifold.union(boxes)), 0.004)
    }
  })

  test('a peg through a plate leaves the plate its own walls', () => {
    const plate = box(40, 40, 4)
    const peg = translate(box(6, 6, 20), [17, 17, 0])
    const solid = wasm.Manifold.union([
      wasm.Manifold.cube([40, 40, 4]),
      wasm.Manifold.cube([6, 6, 20]).translate([17, 17, 0]),
    ])
    expectSame(merge([plate, peg]), meshFrom(solid), 0.001)
  })
})

function meshFrom(solid: InstanceType<typeof wasm.Manifold>): Mesh {
  const { vertProperties, triVerts, numProp } = solid.getMesh()
  expect(numProp).toBe(3)
  return { positions: Float64Array.from(vertProperties), indices: Uint32Array.from(triVerts) }
}
