import { describe, expect, test } from 'vitest'
import { findCrowd } from '../../../../src/core/census/coarse/crowding.ts'
import { profileLayers } from '../../../../src/core/census/coarse/layerProfile.ts'
import { planLayers } from '../../../../src/core/census/cut/layerPlan.ts'
import { placeMesh } from '../../../../src/core/mesh/pose.ts'
import type { Mesh } from '../../../../src/core/model/mesh.ts'
import { POSE_AS_DRAWN } from '../../../../src/core/model/settings.ts'
import { crowd } from '../../../support/crowd.ts'
import { sphere } from '../../../support/meshes.ts'

function crowdOf(mesh: Mesh) {
  const placed = placeMesh(mesh, 1, POSE_AS_DRAWN)
  const heightMm = [...placed.positions].reduce(
    (most, at, i) => (i % 3 === 2 && at > most ? at : most),
    0,
  )
  const plan = planLayers(heightMm, 0.2, 0.2)
  return findCrowd(placed, plan, 0.4, () => profileLayers(placed, plan))
}

describe('a crowd', () => {
  test('is no part of one body, however fine', () => {
    expect(crowdOf(sphere(60, 300))).toBeNull()
  })

  test('is bodies by the thousand through one another: few layers, and rows wider the more there are', () => {
    const five = crowdOf(crowd(5000, 40, 60))!
    const twenty = crowdOf(crowd(20_000, 40, 60))!
    expect(five.every).toBeGreaterThan(8)
    expect(twenty.every).toBeGreaterThan(five.every)
    expect(twenty.pitchTimes).toBeGreaterThan(1)
    expect(twenty.pitchTimes).toBeLessThanOrEqual(8)
  })

  test('is not the same bodies side by side', () => {
    expect(crowdOf(crowd(5000, 2, 200))).toBeNull()
  })
})
