import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { readMesh } from '../../../src/core/formats/read.ts'
import { orientMesh } from '../../../src/core/mesh/orient.ts'
import { poseOptions } from '../../../src/core/mesh/poseOptions.ts'
import { placeMesh } from '../../../src/core/mesh/pose.ts'
import type { Mesh } from '../../../src/core/model/mesh.ts'
import { POSE_AS_DRAWN } from '../../../src/core/model/settings.ts'
import { box, circle, merge, prism, rectangle, rotate, translate } from '../../support/meshes.ts'

const heightOf = ({ positions }: Mesh) =>
  Math.max(...positions.filter((_, i) => i % 3 === 2)) -
  Math.min(...positions.filter((_, i) => i % 3 === 2))

describe('poseOptions', () => {
  test('lays a plate on its large side, its holes upright, however it was drawn', () => {
    const plate = prism(rectangle(60, 40), 4, [circle(1.6, 24, 10, 10), circle(1.6, 24, 50, 30)])
    for (const turn of [
      [0, 0, 0],
      [90, 0, 0],
      [0, 90, 30],
      [20, 30, 40],
    ] as const) {
      const [best] = poseOptions(rotate(plate, turn), 50)
      expect(best!.heightMm).toBeCloseTo(4, 6)
      expect(best).toMatchObject({ holes: 2, holesUpright: 2 })
      expect(best!.overhangMm2).toBeLessThan(0.01)
      expect(heightOf(placeMesh(rotate(plate, turn), 1, best!.pose))).toBeCloseTo(4, 4)
    }
  })

  test('prefers the side without overhang to a larger one with it', () => {
    // A table, drawn standing on its four feet: upside down, its top on the bed, nothing hangs
    // over.
    const leg = box(5, 5, 20)
    const table = merge([
      translate(box(50, 50, 4), [0, 0, 20]),
      leg,
      translate(leg, [45, 0, 0]),
      translate(leg, [0, 45, 0]),
      translate(leg, [45, 45, 0]),
    ])
    const [best, ...others] = poseOptions(table, 50)
    expect(best!.name).toBe('Upside down')
    // Only the tops of the feet, hidden in the joint.
    expect(best!.overhangMm2).toBeCloseTo(100, 6)
    const standing = others.find((each) => each.name === 'As drawn')
    expect(standing?.overhangMm2).toBeGreaterThan(2000)
  })

  test('puts a hole upright where two sides are otherwise alike', () => {
    const cube = prism(rectangle(20, 20), 20, [circle(3, 32, 10, 10)])
    const [best] = poseOptions(rotate(cube, [90, 0, 0]), 50)
    expect(best!.holesUpright).toBe(1)
    expect(['On its front', 'On its back']).toContain(best!.name)
  })

  test('lays the sample arm flat', () => {
    const bytes = new Uint8Array(readFileSync('public/demo/front-arm.stl'))
    const arm = orientMesh(readMesh(bytes, 'front-arm.stl').mesh)
    const [best] = poseOptions(placeMesh(arm, 1, POSE_AS_DRAWN), 50)
    expect(best!.heightMm).toBeLessThan(20)
  })

  test('offers nothing for a mesh that stands on nothing', () => {
    expect(
      poseOptions({ positions: new Float64Array(0), indices: new Uint32Array(0) }, 50),
    ).toEqual([])
  })
})
