import { expect, test } from 'vitest'
import { countAllLayers } from '../../src/core/census/countAllLayers.ts'
import { placeMesh } from '../../src/core/mesh/pose.ts'
import { POSE_AS_DRAWN, RECIPE_DEFAULTS } from '../../src/core/model/settings.ts'
import type { Vec3 } from '../../src/core/model/mesh.ts'
import { meshOf } from '../support/meshes.ts'

// The points of the first layer's outlines were handed to one call as its arguments, and there are
// only so many of those: a knurled disc with a brim ended in “Maximum call stack size exceeded”.

const TEETH = 35_000
const RADIUS_MM = 60
const DEPTH_MM = 0.05

test('a brim goes round an outline of 70,000 points', () => {
  const n = 2 * TEETH
  const points: Vec3[] = []
  for (const z of [0, 0.4]) {
    for (let i = 0; i < n; i++) {
      const turn = (2 * Math.PI * i) / n
      const radius = RADIUS_MM - (i % 2) * DEPTH_MM
      points.push([radius * Math.cos(turn), radius * Math.sin(turn), z])
    }
  }
  points.push([0, 0, 0], [0, 0, 0.4])
  const indices: number[] = []
  for (let i = 0; i < n; i++) {
    const next = (i + 1) % n
    indices.push(2 * n, next, i, 2 * n + 1, n + i, n + next, i, next, n + next, i, n + next, n + i)
  }
  const disc = placeMesh(meshOf(points, indices), 1, POSE_AS_DRAWN)
  const brimMm = 5
  const { brimMm3 } = countAllLayers(disc, { ...RECIPE_DEFAULTS, layerMm: 0.2, brimMm })
  // A ring from the tips of the teeth outwards; what lies between the teeth adds at most half their
  // depth all round.
  const ringMm2 = Math.PI * ((RADIUS_MM + brimMm) ** 2 - RADIUS_MM ** 2)
  const betweenMm2 = Math.PI * RADIUS_MM * DEPTH_MM
  expect(brimMm3 / 0.2).toBeGreaterThan(ringMm2 * 0.999)
  expect(brimMm3 / 0.2).toBeLessThan((ringMm2 + betweenMm2) * 1.001)
})
