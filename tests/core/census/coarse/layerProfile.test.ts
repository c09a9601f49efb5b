import { describe, expect, test } from 'vitest'
import { profileLayers } from '../../../../src/core/census/coarse/layerProfile.ts'
import { planLayers } from '../../../../src/core/census/cut/layerPlan.ts'
import { createPlaneCutter } from '../../../../src/core/census/cut/planeCutter.ts'
import { placeMesh } from '../../../../src/core/mesh/pose.ts'
import type { Mesh } from '../../../../src/core/model/mesh.ts'
import { POSE_AS_DRAWN } from '../../../../src/core/model/settings.ts'
import {
  box,
  cone,
  cubeWithHole,
  merge,
  rotate,
  sphere,
  torus,
  translate,
} from '../../../support/meshes.ts'

const PARTS: readonly (readonly [string, Mesh])[] = [
  ['box', box(30, 20, 40)],
  ['cube with a hole, askew', rotate(cubeWithHole(20, 5, 48), [31, 17, 5])],
  ['ball', sphere(20, 64)],
  ['cone', cone(15, 50, 96)],
  ['standing ring', rotate(torus(20, 5, 64, 32), [90, 0, 0])],
  [
    'two boxes far off',
    translate(merge([box(5, 5, 9), translate(box(4, 4, 30), [60, 40, 0])]), [900, -700, 0]),
  ],
]

describe.each(PARTS)('the profile of %s', (_name, mesh) => {
  const placed = placeMesh(mesh, 1, POSE_AS_DRAWN)
  const heightMm = placed.positions.filter((_, i) => i % 3 === 2).toSorted((a, b) => b - a)[0]!
  const plan = planLayers(heightMm, 0.2, 0.25)
  const profile = profileLayers(placed, plan)

  test('holds area and outline of every layer as the cut itself', () => {
    const slice = createPlaneCutter(placed, plan, { cos: 1, sin: 0 })
    for (let layer = plan.count - 1; layer >= 0; layer--) {
      const { points, count } = slice(layer)
      let twice = 0
      let lengthMm = 0
      for (let i = 0; i < 4 * count; i += 4) {
        const [u, v, toU, toV] = points.slice(i, i + 4) as unknown as [
          number,
          number,
          number,
          number,
        ]
        twice += u * toV - v * toU
        lengthMm += Math.hypot(toU - u, toV - v)
      }
      expect(profile.areaMm2[layer]).toBeCloseTo(Math.abs(twice) / 2, 5)
      expect(profile.lengthMm[layer]).toBeCloseTo(lengthMm, 5)
    }
  })

  test('sees as much from above as from below, and all of it', () => {
    const sum = (values: Float64Array): number => values.reduce((total, each) => total + each, 0)
    let twice = 0
    const { positions: p, indices } = placed
    for (let t = 0; t < indices.length; t += 3) {
      const [a, b, c] = [0, 1, 2].map((k) => 3 * indices[t + k]!) as [number, number, number]
      twice += Math.abs(
        (p[b]! - p[a]!) * (p[c + 1]! - p[a + 1]!) - (p[b + 1]! - p[a + 1]!) * (p[c]! - p[a]!),
      )
    }
    // Slanting faces are shared out among the gaps between cuts layer by layer, to some percent
    // where they begin and end.
    expect(sum(profile.upMm2) / (twice / 4)).toBeCloseTo(1, 1)
    expect(sum(profile.downMm2) / (twice / 4)).toBeCloseTo(1, 1)
  })
})
