import { describe, expect, it } from 'vitest'
import { restingFaces } from '../../../src/core/mesh/faces.ts'
import { FACE_POSES, placeMesh } from '../../../src/core/mesh/pose.ts'
import type { Mesh, Vec3 } from '../../../src/core/model/mesh.ts'
import {
  box,
  circle,
  cone,
  flip,
  merge,
  meshOf,
  prism,
  rotate,
  scale,
  shuffleTriangles,
  sphere,
  tetrahedron,
  translate,
} from '../../support/meshes.ts'
import { seededRandom } from '../../support/random.ts'

/**
 * Area that lies flat on z = 0 once the mesh is placed: what `flatAreaMm2` promises, by another
 * road.
 */
function areaOnBed(mesh: Mesh, withinMm: number): number {
  const { positions: p, indices } = mesh
  let area = 0
  for (let i = 0; i < indices.length; i += 3) {
    const [a, b, c] = [indices[i]! * 3, indices[i + 1]! * 3, indices[i + 2]! * 3]
    if (Math.max(p[a + 2]!, p[b + 2]!, p[c + 2]!) > withinMm) continue
    const cross =
      (p[b]! - p[a]!) * (p[c + 1]! - p[a + 1]!) - (p[b + 1]! - p[a + 1]!) * (p[c]! - p[a]!)
    area += Math.abs(cross) / 2
  }
  return area
}

function heightOf({ positions }: Mesh): number {
  return Math.max(...positions.filter((_, i) => i % 3 === 2))
}

const areas = (mesh: Mesh) => restingFaces(mesh).map((face) => Math.round(face.flatAreaMm2))
const heights = (mesh: Mesh) => restingFaces(mesh).map((face) => Number(face.heightMm.toFixed(3)))

describe('restingFaces', () => {
  it('finds the six sides of a box, the broadest first and the as-drawn one before its twin', () => {
    const faces = restingFaces(box(60, 30, 10))
    expect(faces.map((face) => face.flatAreaMm2)).toEqual([1800, 1800, 600, 600, 300, 300])
    expect(faces.map((face) => face.heightMm)).toEqual([10, 10, 30, 30, 60, 60])
    // Half the shorter side of each face.
    expect(faces.map((face) => face.marginMm)).toEqual([15, 15, 5, 5, 5, 5])
    expect(faces[0]!.pose).toEqual({ rotateDeg: [0, 0, 0] })
    expect(faces[0]!.normal).toEqual([0, 0, -1])
  })

  it('names the sides of a box by the very poses the page offers', () => {
    const poses = restingFaces(box(60, 30, 10)).map((face) => face.pose.rotateDeg)
    expect(poses).toHaveLength(6)
    expect(poses).toEqual(expect.arrayContaining(FACE_POSES.map(({ pose }) => pose.rotateDeg)))
  })

  it('lays a tilted bar on its broad faces first, and stands it on its ends last', () => {
    // 168 × 20 × 14 mm, an arm's size.
    const bar = rotate(box(168, 20, 14), [31, -47, 112])
    expect(areas(bar)).toEqual([3360, 3360, 2352, 2352, 280, 280])
    expect(heights(bar)).toEqual([14, 14, 20, 20, 168, 168])
  })

  it.each([[[0, 0, 0]], [[31, -47, 112]], [[-170, 3, 89]], [[90, 0, 0.5]], [[0, 90, 45]]] as const)(
    'gives poses that place a wedge turned by %j flat on the bed',
    (degrees) => {
      const wedge = rotate(
        prism(
          [
            [0, 0],
            [40, 0],
            [40, 12],
            [0, 30],
          ],
          18,
        ),
        degrees,
      )
      const faces = restingFaces(wedge)
      expect(faces).toHaveLength(6)
      for (const face of faces) {
        const placed = placeMesh(wedge, 1, face.pose)
        expect(areaOnBed(placed, 1e-6)).toBeCloseTo(face.flatAreaMm2, 6)
        expect(heightOf(placed)).toBeCloseTo(face.heightMm, 6)
      }
    },
  )

  it('leaves out sides the part would tip off', () => {
    // A leaning prism: on its small bottom its centre of mass (x = 25) is beyond the contact (x up
    // to 10).
    const lean = prism(
      [
        [0, 0],
        [10, 0],
        [50, 40],
        [40, 40],
      ],
      8,
    )
    const normals = restingFaces(lean).map((face) =>
      face.normal.map((n) => Math.round(n * 100) / 100),
    )
    expect(normals).toHaveLength(4)
    expect(normals).not.toContainEqual([0, -1, 0])
    expect(normals).not.toContainEqual([0, 1, 0])
  })

  it('counts three feet as one side, with the outline drawn round all of them', () => {
    const deck = translate(box(60, 60, 3), [0, 0, 10])
    const foot = (x: number, y: number) => translate(box(4, 4, 10), [x, y, 0])
    const stool = merge([deck, foot(0, 0), foot(56, 0), foot(28, 56)])
    const onFeet = restingFaces(stool).find((face) => face.normal[2] < -0.99)
    expect(onFeet?.flatAreaMm2).toBeCloseTo(48, 9)
    expect(onFeet?.heightMm).toBe(13)
    expect(onFeet!.marginMm).toBeGreaterThan(10)
    expect(restingFaces(stool)[0]!.normal).toEqual([0, 0, 1])
  })

  it('takes a face as flat within 0.05 mm, and no further', () => {
    const pair = (gap: number) => merge([box(20, 10, 5), translate(box(20, 10, 5), [0, 12, gap])])
    const below = (mesh: Mesh) => restingFaces(mesh).find((face) => face.normal[2] < -0.99)
    expect(below(pair(0.04))?.flatAreaMm2).toBeCloseTo(400, 6)
    // On one bar alone the pair would tip: its centre of mass is between the two.
    expect(below(pair(0.06))).toBeUndefined()
  })

  it('stands a cone on its base only, and a cylinder on its two ends', () => {
    expect(restingFaces(cone(10, 30, 96)).map((face) => face.heightMm)).toEqual([30])
    const cylinder = prism(circle(10, 64), 25)
    expect(heights(cylinder)).toEqual([25, 25])
    // A hexagon bar does lie on its flats.
    expect(restingFaces(prism(circle(10, 6), 25))).toHaveLength(8)
  })

  it('finds no side on a ball, an empty mesh and a single triangle seen as nothing', () => {
    expect(restingFaces(sphere(20, 40))).toEqual([])
    expect(restingFaces({ positions: new Float32Array(0), indices: new Uint32Array(0) })).toEqual(
      [],
    )
    expect(
      restingFaces(
        meshOf(
          [
            [0, 0, 0],
            [1, 1, 1],
            [2, 2, 2],
          ],
          [0, 1, 2],
        ),
      ),
    ).toEqual([])
  })

  it('finds the four sides of a tetrahedron', () => {
    const faces = restingFaces(tetrahedron(30))
    expect(faces).toHaveLength(4)
    // Edge² · √3 / 4, and the height edge · √(2/3).
    for (const face of faces) {
      expect(face.flatAreaMm2).toBeCloseTo((900 * Math.sqrt(3)) / 4, 6)
      expect(face.heightMm).toBeCloseTo(30 * Math.sqrt(2 / 3), 6)
      // The centre of a triangle is a third of its height from each side.
      expect(face.marginMm).toBeCloseTo((30 * Math.sqrt(3)) / 2 / 3, 6)
    }
  })

  it('stays the same inside out, shuffled, far from the origin; areas follow the square of the size', () => {
    const part = rotate(box(60, 30, 10), [12, 34, 56])
    const expected = areas(part)
    expect(areas(flip(part))).toEqual(expected)
    expect(areas(shuffleTriangles(part, seededRandom(7)))).toEqual(expected)
    expect(areas(translate(part, [1e5, -1e5, 1e5]))).toEqual(expected)
    expect(areas(scale(part, 2))).toEqual(expected.map((area) => area * 4))
  })

  it('gives outward unit normals', () => {
    const length = ([x, y, z]: Vec3) => Math.hypot(x, y, z)
    for (const { normal } of restingFaces(rotate(box(60, 30, 10), [12, 34, 56]))) {
      expect(length(normal)).toBeCloseTo(1, 12)
    }
  })
})
