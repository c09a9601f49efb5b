import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { readMesh } from '../../../../src/core/formats/read.ts'
import { measureMesh } from '../../../../src/core/mesh/measure.ts'
import { cleanMesh } from '../../../../src/core/mesh/split/cleanMesh.ts'
import { splitPlate } from '../../../../src/core/mesh/split/splitPlate.ts'
import { weldSoup } from '../../../../src/core/model/weld.ts'
import type { Mesh, Vec3 } from '../../../../src/core/model/mesh.ts'
import {
  box,
  cone,
  flip,
  merge,
  meshOf,
  mirror,
  prism,
  rectangle,
  circle,
  rotate,
  shuffleTriangles,
  single,
  soupOf,
  sphere,
  translate,
  tube,
} from '../../../support/meshes.ts'
import { seededRandom } from '../../../support/random.ts'

const at = (mesh: Mesh, x: number, y = 0, z = 0) => translate(mesh, [x, y, z])
const summary = (mesh: Mesh) =>
  splitPlate(mesh).groups.map(({ count, mirrored }) => [count, mirrored])

/** An L with a foot: no two axes alike, and not its own mirror image. */
const handed = weldSoup(
  soupOf(
    prism(
      [
        [0, 0],
        [30, 0],
        [30, 6],
        [8, 6],
        [8, 18],
        [0, 18],
      ],
      4,
    ),
  ),
)
const withPeg = merge([handed, at(box(3, 3, 5), 1, 13, 3)])

const ANGLES: readonly Vec3[] = [
  [0, 0, 90],
  [0, 0, 37],
  [20, 30, 40],
  [180, 0, 10],
]

describe('splitPlate', () => {
  for (const angles of ANGLES) {
    test(`puts equal parts together when one lies turned by ${angles.join(', ')}°`, () => {
      const plate = merge([withPeg, at(rotate(withPeg, angles), 80), at(withPeg, 0, 60)])
      expect(summary(plate)).toEqual([[3, 0]])
    })

    test(`recognises a mirrored twin turned by ${angles.join(', ')}°`, () => {
      const plate = merge([withPeg, at(rotate(mirror(withPeg), angles), 80), at(withPeg, 0, 60)])
      expect(summary(plate)).toEqual([[3, 1]])
    })
  }

  test('calls a part that is its own mirror image equal, not mirrored', () => {
    expect(summary(merge([handed, at(mirror(handed), 80)]))).toEqual([[2, 0]])
    expect(summary(merge([box(10, 20, 30), at(mirror(box(10, 20, 30)), 80)]))).toEqual([[2, 0]])
  })

  test('keeps parts apart that differ by one small hole', () => {
    const plain = prism(rectangle(40, 20), 4)
    const drilled = prism(rectangle(40, 20), 4, [circle(1, 24, 10, 10)])
    expect(summary(merge([plain, at(drilled, 60), at(plain, 0, 40)]))).toEqual([
      [2, 0],
      [1, 0],
    ])
  })

  test('keeps bodies of the same volume apart', () => {
    expect(summary(merge([box(10, 10, 10), at(box(20, 10, 5), 40)]))).toHaveLength(2)
  })

  test('groups round and square bodies, whose own axes are anybody’s choice', () => {
    const plate = merge([
      tube(12, 5, 10, 48),
      at(rotate(tube(12, 5, 10, 48), [10, 20, 30]), 40),
      at(sphere(6, 24), 80),
      at(rotate(sphere(6, 24), [50, 0, 0]), 100),
      at(cone(5, 10, 24), 0, 50),
    ])
    expect(summary(plate)).toEqual([
      [2, 0],
      [2, 0],
      [1, 0],
    ])
  })

  test('keeps a cavity with its body, and bodies that overlap or touch with each other', () => {
    const hollow = merge([box(20, 20, 20), at(flip(box(10, 10, 10)), 5, 5, 5)])
    const crossing = merge([box(20, 5, 5), at(box(5, 20, 5), 7, -7)])
    const stacked = merge([box(10, 10, 10), at(box(10, 10, 10), 0, 0, 10)])
    const plate = merge([hollow, at(crossing, 50), at(stacked, 100)])
    const { groups } = splitPlate(plate)
    expect(groups.map((group) => group.count)).toEqual([1, 1, 1])
    expect(measureMesh(groups[0]!.mesh, 1).volumeMm3).toBeCloseTo(7000, 6)
    expect(groups[1]!.mesh.indices.length).toBe(crossing.indices.length)
    expect(groups[2]!.mesh.indices.length).toBe(stacked.indices.length)
  })

  test('takes parts apart that lie nested in each other’s box without touching', () => {
    const corner = prism(
      [
        [0, 0],
        [30, 0],
        [30, 4],
        [4, 4],
        [4, 30],
        [0, 30],
      ],
      4,
    )
    expect(summary(merge([corner, at(corner, 8, 8)]))).toEqual([[2, 0]])
  })

  test('does not mind single precision, order of triangles or bodies inside out', () => {
    const random = seededRandom(5)
    const plate = merge([withPeg, at(flip(rotate(withPeg, [0, 0, 41])), 90, 12)])
    expect(summary(single(shuffleTriangles(plate, random)))).toEqual([[2, 0]])
  })

  test('leaves one part whole', () => {
    expect(summary(box(10, 10, 10))).toEqual([[1, 0]])
  })

  test('finds three equal feet in the sample, and a stray triangle to leave out', () => {
    const bytes = new Uint8Array(readFileSync('public/demo/feet.stl'))
    const plate = splitPlate(readMesh(bytes, 'feet.stl').mesh)
    expect(plate.groups.map(({ count, mirrored }) => [count, mirrored])).toEqual([[3, 0]])
    expect(plate.leftOut).toBe(1)
  })
})

describe('cleanMesh', () => {
  const speck = at(box(0.2, 0.2, 0.2), 60)

  test('drops specks and loose sheets; the part keeps its volume and gets its own size back', () => {
    const sheet = at(
      meshOf(
        [
          [0, 0, 0],
          [1, 0, 0],
          [0, 1, 0],
        ],
        [0, 1, 2],
      ),
      40,
    )
    const dirty = merge([box(20, 20, 20), speck, sheet])
    const clean = measureMesh(cleanMesh(dirty), 1)
    expect(clean.boundsMm.max).toEqual([20, 20, 20])
    expect(clean.volumeMm3).toBeCloseTo(8000, 6)
    expect(clean.findings).toEqual([])
  })

  test('keeps what is small but belongs there', () => {
    const mesh = merge([box(20, 20, 20), at(box(9, 9, 9), 40)])
    expect(cleanMesh(mesh)).toBe(mesh)
  })
})
