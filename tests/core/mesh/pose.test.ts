import { describe, expect, it } from 'vitest'
import { FACE_POSES, originOf, placeMesh, turnMatrix } from '../../../src/core/mesh/pose.ts'
import { POSE_AS_DRAWN } from '../../../src/core/model/settings.ts'
import type { Mesh } from '../../../src/core/model/mesh.ts'
import { box, meshOf, rotate, single, translate } from '../../support/meshes.ts'

function boundsOf(mesh: Mesh) {
  const axis = (k: number) => [...mesh.positions].filter((_, i) => i % 3 === k)
  return [0, 1, 2].map((k) => [Math.min(...axis(k)), Math.max(...axis(k))])
}

describe('placeMesh', () => {
  it('hands back the very mesh when it already lies on the bed at the origin', () => {
    const mesh = box(3, 4, 5)
    expect(placeMesh(mesh, 1, POSE_AS_DRAWN)).toBe(mesh)
    expect(placeMesh(mesh, 1, { rotateDeg: [360, -720, 0] })).toBe(mesh)
  })

  it('turns inches into millimetres and sets the part on the bed', () => {
    const placed = placeMesh(translate(box(1, 2, 3), [5, 5, 5]), 25.4, POSE_AS_DRAWN)
    const expected = [
      [-12.7, 12.7],
      [-25.4, 25.4],
      [0, 76.2],
    ]
    boundsOf(placed).forEach((range, k) => {
      range.forEach((value, end) => expect(value).toBeCloseTo(expected[k]![end]!, 12))
    })
  })

  it('shares the indices and leaves the given positions as they were', () => {
    const mesh = translate(box(1, 2, 3), [9, 9, 9])
    const before = mesh.positions.slice()
    const placed = placeMesh(mesh, 2, { rotateDeg: [10, 20, 30] })
    expect(placed.indices).toBe(mesh.indices)
    expect(mesh.positions).toEqual(before)
  })

  it('turns about x, then y, then z', () => {
    const mesh = box(3, 4, 5)
    const placed = placeMesh(mesh, 1, { rotateDeg: [25, -40, 70] })
    const turned = rotate(mesh, [25, -40, 70])
    for (let i = 3; i < turned.positions.length; i++) {
      const relative = placed.positions[i]! - placed.positions[i % 3]!
      expect(relative).toBeCloseTo(turned.positions[i]! - turned.positions[i % 3]!, 12)
    }
    expect(boundsOf(placed)[2]![0]).toBe(0)
  })

  it('keeps faces flat to the last bit at quarter turns', () => {
    for (const { pose } of FACE_POSES) {
      const z = boundsOf(placeMesh(box(3.3, 4.7, 5.9), 1, pose))[2]!
      expect(z[0]).toBe(0)
      const levels = new Set(
        [...placeMesh(box(3.3, 4.7, 5.9), 1, pose).positions].filter((_, i) => i % 3 === 2),
      )
      expect(levels.size).toBe(2)
    }
  })

  it('loses nothing of a single-precision part drawn 100 m away', () => {
    const far = single(translate(box(4, 4, 4), [1e5, 1e5, 1e5]))
    expect(boundsOf(placeMesh(far, 1, { rotateDeg: [0, 90, 0] }))).toEqual([
      [-2, 2],
      [-2, 2],
      [0, 4],
    ])
  })

  it('heeds only vertices that triangles use', () => {
    const { positions, indices } = translate(box(3, 4, 5), [1, 1, 1])
    const mesh = { positions: Float64Array.from([...positions, -900, -900, -900]), indices }
    const placed = placeMesh(mesh, 1, POSE_AS_DRAWN)
    expect(Array.from(placed.positions.subarray(0, 3))).toEqual([-1.5, -2, 0])
  })

  it('takes an empty mesh', () => {
    expect(placeMesh(meshOf([], []), 25.4, POSE_AS_DRAWN).positions).toHaveLength(0)
  })
})

describe('FACE_POSES', () => {
  // A marker on each side of the part as drawn: the named face must end up lowest.
  const sides = {
    bottom: [0, 0, -1],
    top: [0, 0, 1],
    front: [0, -1, 0],
    back: [0, 1, 0],
    left: [-1, 0, 0],
    right: [1, 0, 0],
  } as const

  it.each(FACE_POSES)('$name lays the $face on the bed', ({ face, pose }) => {
    const points = Object.values(sides)
    const placed = placeMesh(meshOf(points, [0, 1, 2, 3, 4, 5]), 1, pose)
    const heights = points.map((_, i) => placed.positions[3 * i + 2]!)
    expect(heights[Object.keys(sides).indexOf(face)]).toBe(0)
    expect(heights.filter((height) => height === 0)).toHaveLength(1)
  })

  it('names six different faces', () => {
    expect(new Set(FACE_POSES.map(({ face }) => face)).size).toBe(6)
  })
})

it('the origin of a placed drawing carries every corner to where it lies', () => {
  const poses = [
    [0, 0, 0],
    [90, 0, 0],
    [30, -50, 120],
  ] as const
  for (const rotateDeg of poses) {
    for (const mm of [1, 25.4]) {
      const drawn = translate(box(3, 2, 1), [400, -70, 9])
      const placed = placeMesh(drawn, mm, { rotateDeg })
      const origin = originOf(drawn, placed, mm, { rotateDeg })
      const turn = turnMatrix({ rotateDeg })
      for (const v of drawn.indices) {
        for (let k = 0; k < 3; k++) {
          const turned = [0, 1, 2].reduce(
            (sum, j) => sum + turn[3 * k + j]! * drawn.positions[3 * v + j]!,
            0,
          )
          expect(origin[k]! + mm * turned).toBeCloseTo(placed.positions[3 * v + k]!, 6)
        }
      }
    }
  }
})
