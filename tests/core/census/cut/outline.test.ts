import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { joinContours } from '../../../../src/core/census/cut/contours.ts'
import { planLayers } from '../../../../src/core/census/cut/layerPlan.ts'
import { simplifyContours } from '../../../../src/core/census/cut/simplify.ts'
import { createPlaneCutter } from '../../../../src/core/census/cut/planeCutter.ts'
import type { Mesh } from '../../../../src/core/model/mesh.ts'
import {
  circle,
  loopArea,
  prism,
  shuffleTriangles,
  torus,
  translate,
} from '../../../support/meshes.ts'
import { seededRandom } from '../../../support/random.ts'

const STRAIGHT = { cos: 1, sin: 0 }

function contoursAtMiddle(mesh: Mesh, height: number) {
  const plan = planLayers(height, height, height)
  return joinContours(createPlaneCutter(mesh, plan, STRAIGHT)(0))
}

describe('joining', () => {
  test('a ring cut across has two contours and its exact area', () => {
    const outer = circle(10, 50)
    const inner = circle(6, 40)
    const contours = contoursAtMiddle(prism(outer, 4, [inner]), 4)
    expect(contours.start.length - 1).toBe(2)
    expect(contours.signedAreaMm2).toBeCloseTo(
      Math.abs(loopArea(outer)) - Math.abs(loopArea(inner)),
      9,
    )
    expect(contours.bridgedMm).toBe(0)
  })

  test('the order of the triangles does not matter', () => {
    const ring = translate(torus(20, 5, 48, 24), [0, 0, 5])
    const shuffled = shuffleTriangles(ring, seededRandom(7))
    const outline = (mesh: Mesh) => simplifyContours(contoursAtMiddle(mesh, 10), 0.001)
    const areas = [ring, shuffled].map((mesh) => contoursAtMiddle(mesh, 10).signedAreaMm2)
    expect(areas[0]).toBeCloseTo(areas[1]!, 9)
    expect(outline(shuffled).points.length).toBe(outline(ring).points.length)
  })
})

describe('simplifying', () => {
  test('keeps within the tolerance of every point it drops', () => {
    const loop = fc.tuple(
      fc.integer({ min: 3, max: 200 }),
      fc.double({ min: 0, max: 0.3, noNaN: true }),
    )
    fc.assert(
      fc.property(loop, fc.integer(), ([n, noise], seed) => {
        const random = seededRandom(seed)
        const points = Array.from({ length: n }, (_, i) => {
          const radius = 10 + noise * (random() - 0.5)
          const angle = (2 * Math.PI * i) / n
          return [radius * Math.cos(angle), radius * Math.sin(angle)] as const
        })
        const flat = Float64Array.from(points.flat())
        const start = Int32Array.from([0, n])
        const tolerance = 0.02
        const kept = simplifyContours(
          { points: flat, start, signedAreaMm2: 0, bridgedMm: 0, lengthMm: 0 },
          tolerance,
        )
        const corners = Array.from({ length: kept.points.length / 2 }, (_, i) => [
          kept.points[2 * i]!,
          kept.points[2 * i + 1]!,
        ])
        for (const point of points) {
          const away = Math.min(
            ...corners.map((a, i) => distance(point, a, corners[(i + 1) % corners.length]!)),
          )
          expect(away).toBeLessThan(tolerance * 1.001)
        }
      }),
      { seed: 20261125, numRuns: 200 },
    )
  })
})

function distance(p: readonly number[], a: readonly number[], b: readonly number[]): number {
  const [du, dv] = [b[0]! - a[0]!, b[1]! - a[1]!]
  const along = ((p[0]! - a[0]!) * du + (p[1]! - a[1]!) * dv) / (du * du + dv * dv || 1)
  const t = Math.min(1, Math.max(0, along))
  return Math.hypot(p[0]! - a[0]! - t * du, p[1]! - a[1]! - t * dv)
}
