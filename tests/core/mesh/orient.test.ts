import { describe, expect, test } from 'vitest'
import { measureMesh } from '../../../src/core/mesh/measure.ts'
import { orientMesh } from '../../../src/core/mesh/orient.ts'
import { weldSoup } from '../../../src/core/model/weld.ts'
import type { Mesh } from '../../../src/core/model/mesh.ts'
import { censusOf, relative } from '../../support/censusCase.ts'
import {
  box,
  flip,
  merge,
  meshOf,
  mirror,
  pickTriangles,
  prism,
  soupOf,
  sphere,
  translate,
  tube,
} from '../../support/meshes.ts'
import { problemOf } from '../../support/problemOf.ts'
import { seededRandom } from '../../support/random.ts'
import { signedVolume } from '../../support/signedVolume.ts'

const part = tube(12, 5, 10, 48)
const at = (mesh: Mesh, x: number, y = 0, z = 0) => translate(mesh, [x, y, z])

function randomlyTurned(mesh: Mesh, seed: number): Mesh {
  const random = seededRandom(seed)
  const indices = mesh.indices.slice()
  for (let i = 0; i < indices.length; i += 3) {
    if (random() < 0.4) [indices[i + 1], indices[i + 2]] = [indices[i + 2]!, indices[i + 1]!]
  }
  return { positions: mesh.positions, indices }
}

const volume = (mesh: Mesh) => measureMesh(mesh, 1).volumeMm3

/** As a file gives them: equal corners are one vertex. */
const welded = (meshes: readonly Mesh[]) => weldSoup(soupOf(merge(meshes)))

/** The layers must enclose what was measured, whichever way triangles face. */
const CASES: readonly [title: string, mesh: Mesh, mm3: number][] = [
  ['a sound part', part, volume(part)],
  ['a part inside out', flip(part), volume(part)],
  ['a mirrored part', { ...part, positions: mirror(part).positions }, volume(part)],
  ['a part with two fifths of its triangles the wrong way', randomlyTurned(part, 3), volume(part)],
  [
    'a sound body beside one inside out',
    merge([box(10, 10, 10), at(flip(box(10, 10, 10)), 20)]),
    2000,
  ],
  [
    'equal bodies whose signed volumes cancel',
    merge([box(10, 10, 10), at(flip(box(10, 10, 10)), 0, 15)]),
    2000,
  ],
  [
    'a body inside out that holds a cavity',
    flip(merge([box(20, 20, 20), at(flip(box(10, 10, 10)), 5, 5, 5)])),
    7000,
  ],
  [
    'a cavity with a solid in it',
    merge([box(20, 20, 20), at(flip(box(12, 12, 12)), 4, 4, 4), at(box(4, 4, 4), 8, 8, 8)]),
    8000 - 1728 + 64,
  ],
  ['both skins of a two-sided surface', welded([box(10, 10, 10), flip(box(10, 10, 10))]), 1000],
  ['a body there twice', welded([box(10, 10, 10), box(10, 10, 10)]), 1000],
  [
    'a loose triangle beside a part',
    merge([
      box(10, 10, 10),
      at(
        meshOf(
          [
            [0, 0, 0],
            [3, 0, 0],
            [0, 0, 3],
          ],
          [0, 1, 2],
        ),
        15,
      ),
    ]),
    1000,
  ],
]

describe('orientMesh', () => {
  for (const [title, mesh, mm3] of CASES) {
    test(`the layers of ${title} enclose its volume`, () => {
      expect(relative(censusOf(orientMesh(mesh)).modelMm3, mm3)).toBeLessThan(0.003)
      expect(relative(signedVolume(orientMesh(mesh)), mm3)).toBeLessThan(1e-6)
    })
  }

  test('what is measured is what the layers enclose', () => {
    for (const [title, mesh, mm3] of CASES) {
      expect(relative(measureMesh(mesh, 1).volumeMm3, mm3), title).toBeLessThan(1e-9)
    }
  })

  test('overlapping bodies, one inside out, are one solid in the layers', () => {
    const crossed = merge([box(10, 10, 10), at(flip(box(10, 10, 10)), 5)])
    // 15 × 10 × 10 together; the non-zero rule alone would cancel the shared 5 × 10 × 10.
    expect(relative(censusOf(orientMesh(crossed)).modelMm3, 1500)).toBeLessThan(0.003)
  })

  test('a loose sheet inside a solid builds no walls', () => {
    const sheet = at(
      meshOf(
        [
          [0, 0, 0],
          [8, 0, 0],
          [8, 0, 8],
          [0, 0, 8],
        ],
        [0, 1, 2, 0, 2, 3],
      ),
      6,
      10,
      6,
    )
    const plain = censusOf(box(20, 20, 20))
    const mended = censusOf(orientMesh(merge([box(20, 20, 20), sheet])))
    expect(mended.wallMm3).toBeCloseTo(plain.wallMm3, 6)
    expect(mended.doubtfulShare).toBe(0)
  })

  test('gives a sound mesh back as it is', () => {
    for (const mesh of [
      part,
      sphere(5, 12),
      merge([box(20, 20, 20), at(flip(box(5, 5, 5)), 4, 4, 4)]),
    ]) {
      expect(orientMesh(mesh)).toBe(mesh)
    }
  })

  test('leaves gaps open and still faces the rest outwards', () => {
    const open = flip(
      pickTriangles(box(10, 10, 10), (triangle, number) => (number < 2 ? [] : [triangle])),
    )
    const mended = orientMesh(open)
    expect(mended.indices.length).toBe(open.indices.length)
    expect(relative(censusOf(mended).modelMm3, 1000)).toBeLessThan(0.003)
  })

  test('a body crossing itself is kept though its lobes cancel', () => {
    // A bow tie pulled up: two triangles meeting in a crossing, facing opposite ways.
    const bow = prism(
      [
        [0, 0],
        [10, 0],
        [10, 10],
        [0, 10],
      ],
      5,
    )
    const positions = Float64Array.from(bow.positions)
    for (const base of [0, 12]) {
      const [x2, y2] = [positions[base + 6]!, positions[base + 7]!]
      positions[base + 6] = positions[base + 9]!
      positions[base + 7] = positions[base + 10]!
      positions[base + 9] = x2
      positions[base + 10] = y2
    }
    const tie = { positions, indices: bow.indices }
    expect(orientMesh(tie).indices.length).toBe(tie.indices.length)
    // Its signed volume is 0: it is refused, never shown as 0 g.
    expect(problemOf(() => measureMesh(tie, 1)).code).toBe('no-volume')
  })
})
