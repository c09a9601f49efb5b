import { describe, expect, it } from 'vitest'
import { measureMesh } from '../../../src/core/mesh/measure.ts'
import type { FindingCode, Mesh, MeshMeasure } from '../../../src/core/model/mesh.ts'
import {
  box,
  flip,
  merge,
  meshOf,
  mirror,
  pickTriangles,
  soupOf,
  sphere,
  translate,
  tube,
} from '../../support/meshes.ts'
import { weldSoup } from '../../../src/core/model/weld.ts'

const codes = (measured: MeshMeasure) => measured.findings.map(({ code }) => code)
const find = (measured: MeshMeasure, code: FindingCode) =>
  measured.findings.find((finding) => finding.code === code)
const rewelded = (mesh: Mesh) => weldSoup(soupOf(mesh))
const cube = box(10, 10, 10)
const turnFirst = (mesh: Mesh, count: number) =>
  pickTriangles(mesh, ([a, b, c], t) => [t < count ? [a, c, b] : [a, b, c]])

describe('a sound mesh', () => {
  it.each([
    ['a box', cube],
    ['a ball', sphere(10, 32)],
    ['a tube', tube(10, 8, 30, 32)],
  ])('%s has nothing to report', (_, mesh) => {
    expect(measureMesh(mesh, 1).findings).toEqual([])
  })
})

describe('open edges', () => {
  it('are counted when triangles are missing', () => {
    const measured = measureMesh(
      pickTriangles(cube, (triangle, t) => (t === 0 ? [] : [triangle])),
      1,
    )
    expect(codes(measured)).toEqual(['open-edges'])
    expect(find(measured, 'open-edges')).toMatchObject({ count: 3, grade: 'note' })
    expect(measured.findings[0]!.message).toContain(
      '3 edges have a triangle on one side only, so the skin has a gap',
    )
    expect(measured.watertight).toBe(false)
    expect(measured.volumeMm3).toBeCloseTo(1000, 9)
  })
})

describe('edges where more than two triangles meet', () => {
  it('are counted where two boxes touch along one edge, and the boxes stay two', () => {
    const measured = measureMesh(rewelded(merge([cube, translate(cube, [10, 10, 0])])), 1)
    expect(find(measured, 'non-manifold-edges')).toMatchObject({ count: 1 })
    expect(measured).toMatchObject({ bodies: 2, watertight: false })
    expect(measured.volumeMm3).toBeCloseTo(2000, 9)
  })

  it('do not make boxes cancel that touch in a whole face, one of them inside out', () => {
    const pair = merge([cube, flip(translate(cube, [10, 0, 0]))])
    const measured = measureMesh(rewelded(pair), 1)
    expect(measured.volumeMm3).toBeCloseTo(2000, 9)
    expect(measured.bodies).toBe(2)
    expect(codes(measured)).toContain('inside-out')
  })

  it('leave the volume right where a wall crosses the inside', () => {
    const wall = meshOf(
      [
        [0, 0, 0],
        [10, 10, 0],
        [10, 10, 10],
        [0, 0, 10],
      ],
      [0, 1, 2, 0, 2, 3],
    )
    const measured = measureMesh(
      rewelded(merge([translate(cube, [70, 0, 0]), translate(wall, [70, 0, 0])])),
      1,
    )
    expect(codes(measured)).toContain('non-manifold-edges')
    expect(measured.volumeMm3).toBeCloseTo(1000, 9)
  })

  it('are not reported where boxes share a corner only', () => {
    const measured = measureMesh(rewelded(merge([cube, translate(cube, [10, 10, 10])])), 1)
    expect(codes(measured)).toEqual(['several-bodies'])
    expect(measured).toMatchObject({ bodies: 2, watertight: true })
  })
})

describe('facing', () => {
  it('tells an inside-out part, and measures it', () => {
    const measured = measureMesh(flip(cube), 1)
    expect(codes(measured)).toEqual(['inside-out'])
    expect(measured.findings[0]!.message).toContain('The part is inside out')
    expect(measured).toMatchObject({ volumeMm3: 1000, watertight: true })
    expect(codes(measureMesh(mirror(cube), 1))).toEqual([])
  })

  it('tells which of several bodies is inside out', () => {
    const measured = measureMesh(merge([cube, flip(translate(cube, [20, 0, 0]))]), 1)
    expect(measured.volumeMm3).toBeCloseTo(2000, 9)
    expect(find(measured, 'inside-out')).toMatchObject({ count: 1 })
    expect(find(measured, 'inside-out')!.message).toContain('1 body is inside out')
  })

  it('counts triangles that face against the rest', () => {
    const measured = measureMesh(turnFirst(cube, 3), 1)
    expect(codes(measured)).toEqual(['mixed-facing'])
    expect(measured.findings[0]).toMatchObject({ count: 3, grade: 'worth knowing' })
    expect(measured.findings[0]!.message).toContain('3 triangles of 12 face against the rest')
    expect(measured.volumeMm3).toBeCloseTo(1000, 9)
    expect(measured.watertight).toBe(false)
  })

  it('does not let a volume cancel when half the triangles are turned', () => {
    const measured = measureMesh(turnFirst(cube, 6), 1)
    expect(measured.volumeMm3).toBeCloseTo(1000, 9)
    expect(codes(measured)).toContain('mixed-facing')
  })

  it('says so when no facing fits: a band with a half twist', () => {
    const steps = 24
    const points = Array.from({ length: steps }, (_, i) => {
      const turn = (2 * Math.PI * i) / steps
      return [-1, 1].map((side) => {
        const out = 20 + 5 * side * Math.cos(turn / 2)
        return [out * Math.cos(turn), out * Math.sin(turn), 5 * side * Math.sin(turn / 2)] as const
      })
    }).flat()
    const indices = Array.from({ length: steps }, (_, i) => {
      const [a, b] = [2 * i, 2 * i + 1]
      const [c, d] = i + 1 < steps ? [a + 2, b + 2] : [1, 0]
      return [a, c, b, b, c, d]
    }).flat()
    const measured = measureMesh(merge([meshOf(points, indices), translate(cube, [0, 0, 40])]), 1)
    expect(find(measured, 'mixed-facing')).toMatchObject({ grade: 'changes the grams' })
    expect(find(measured, 'mixed-facing')!.message).toContain('uncertain')
    expect(Number.isFinite(measured.volumeMm3)).toBe(true)
  })
})

describe('triangles that do not count', () => {
  it('reports collapsed ones and ones on a line, and keeps the rest watertight', () => {
    // The middle of a bottom edge is a vertex for one neighbour only if a flat triangle fills the
    // seam.
    const { positions, indices } = cube
    const points = Float64Array.from([...positions, 5, 0, 0])
    const split = [...indices].join(',')
    expect(split).toContain('0,1,5')
    const flat = Uint32Array.from([...indices, 3, 3, 4])
    const collapsed = measureMesh({ positions: points, indices: flat }, 1)
    expect(codes(collapsed)).toEqual(['degenerate-triangles'])
    expect(collapsed).toMatchObject({ watertight: true, volumeMm3: 1000, triangles: 13 })

    const side = pickTriangles({ positions: points, indices }, (triangle) =>
      triangle.join() === '0,1,5'
        ? [
            [0, 8, 5],
            [8, 1, 5],
            [0, 1, 8],
          ]
        : [triangle],
    )
    const sliver = measureMesh(side, 1)
    expect(codes(sliver)).toEqual(['degenerate-triangles'])
    expect(find(sliver, 'degenerate-triangles')).toMatchObject({ count: 1 })
    expect(sliver.watertight).toBe(true)
    expect(sliver.volumeMm3).toBeCloseTo(1000, 9)
  })

  it('measures exact copies once', () => {
    const one = measureMesh(
      pickTriangles(cube, ([a, b, c], t) =>
        t === 4
          ? [
              [a, b, c],
              [b, c, a],
            ]
          : [[a, b, c]],
      ),
      1,
    )
    expect(codes(one)).toEqual(['duplicate-triangles'])
    expect(one).toMatchObject({ watertight: false, bodies: 1, areaMm2: 600 })
    expect(one.volumeMm3).toBeCloseTo(1000, 9)
    const all = measureMesh(rewelded(merge([cube, cube])), 1)
    expect(find(all, 'duplicate-triangles')).toMatchObject({ count: 12 })
    expect(all.volumeMm3).toBeCloseTo(1000, 9)
  })

  it('measures a two-sided surface once, whichever order its triangles come in', () => {
    const oneByOne = pickTriangles(cube, ([a, b, c]) => [
      [a, b, c],
      [a, c, b],
    ])
    for (const mesh of [rewelded(merge([cube, flip(cube)])), oneByOne]) {
      const measured = measureMesh(mesh, 1)
      expect(find(measured, 'duplicate-triangles')).toMatchObject({ count: 12 })
      expect(measured.bodies).toBe(1)
      expect(measured.volumeMm3).toBeCloseTo(1000, 9)
    }
  })
})

describe('several bodies', () => {
  it('are counted and added up', () => {
    const feet = merge([cube, translate(cube, [20, 0, 0]), translate(cube, [40, 0, 0])])
    const measured = measureMesh(feet, 1)
    expect(codes(measured)).toEqual(['several-bodies'])
    expect(measured.findings[0]).toMatchObject({ count: 3, grade: 'note' })
    expect(measured.findings[0]!.message).toContain('the layer count takes the shared space once')
    expect(measured.bodies).toBe(3)
    expect(measured.volumeMm3).toBeCloseTo(3000, 9)
  })

  it('are added up where they overlap, and say when one is wholly buried', () => {
    expect(measureMesh(merge([cube, translate(cube, [5, 5, 5])]), 1).volumeMm3).toBeCloseTo(2000, 9)
    const buried = measureMesh(merge([cube, translate(box(2, 2, 2), [4, 4, 4])]), 1)
    expect(buried.volumeMm3).toBeCloseTo(1008, 9)
    expect(find(buried, 'several-bodies')!.message).toContain(
      '1 of them lies wholly inside another',
    )
  })
})

describe('a cavity', () => {
  const shell = (outer: Mesh, inner: Mesh) => merge([outer, translate(inner, [2, 2, 2])])
  const inner = box(6, 6, 6)

  it('is taken off and reported', () => {
    const measured = measureMesh(shell(cube, flip(inner)), 1)
    expect(codes(measured)).toEqual(['cavity'])
    expect(measured.findings[0]).toMatchObject({ count: 1, grade: 'note' })
    expect(measured.findings[0]!.message).toContain('216\u00a0mm³')
    expect(measured.volumeMm3).toBeCloseTo(1000 - 216, 9)
    expect(measured).toMatchObject({ bodies: 2, watertight: true })
  })

  it('is still one when the whole part is inside out', () => {
    const measured = measureMesh(flip(shell(cube, flip(inner))), 1)
    expect(codes(measured)).toEqual(['inside-out', 'cavity'])
    expect(measured.volumeMm3).toBeCloseTo(1000 - 216, 9)
  })

  it('can hold a body, which counts, even one that is inside out', () => {
    const core = translate(box(2, 2, 2), [4, 4, 4])
    for (const held of [core, flip(core)]) {
      const measured = measureMesh(merge([shell(cube, flip(inner)), held]), 1)
      expect(measured.volumeMm3).toBeCloseTo(1000 - 216 + 8, 9)
      expect(find(measured, 'cavity')).toMatchObject({ count: 1 })
      expect(codes(measured).includes('inside-out')).toBe(held !== core)
    }
  })

  it('is none where an inside-out body merely lies beside, above or across another', () => {
    for (const by of [
      [20, 0, 0],
      [0, 0, 20],
      [5, 0, 0],
    ] as const) {
      const measured = measureMesh(merge([cube, flip(translate(cube, by))]), 1)
      expect(codes(measured)).toContain('inside-out')
      expect(codes(measured)).not.toContain('cavity')
      expect(measured.volumeMm3).toBeCloseTo(2000, 9)
    }
  })

  it('is found among many', () => {
    const cells = Array.from({ length: 64 }, (_, i) =>
      translate(flip(box(1, 1, 1)), [1 + 2 * (i % 8), 1 + 2 * Math.floor(i / 8), 1]),
    )
    const measured = measureMesh(merge([box(18, 18, 3), ...cells]), 1)
    expect(find(measured, 'cavity')).toMatchObject({ count: 64 })
    expect(measured.volumeMm3).toBeCloseTo(18 * 18 * 3 - 64, 9)
  })
})

describe('a stray speck', () => {
  // Thicker than a line: thinner ones are hairs, and left out.
  const speck = box(0.2, 0.2, 0.2)
  const mm = 5

  it('is reported far from the part, with the distance', () => {
    const measured = measureMesh(merge([cube, translate(speck, [60, 0, 0])]), mm)
    expect(find(measured, 'stray-speck')).toMatchObject({ count: 1 })
    expect(find(measured, 'stray-speck')!.message).toContain('250 mm away')
  })

  it('is none close to the part, or when it is a part of its own', () => {
    expect(codes(measureMesh(merge([cube, translate(speck, [10.1, 0, 0])]), mm))).toEqual([
      'several-bodies',
    ])
    expect(codes(measureMesh(merge([cube, translate(box(2, 2, 2), [60, 0, 0])]), mm))).toEqual([
      'several-bodies',
    ])
  })
})

describe('an unlikely size', () => {
  it('is told in words; nothing is rescaled', () => {
    const inches = measureMesh(box(0.5, 0.4, 1.5), 1)
    expect(codes(inches)).toEqual(['unlikely-size'])
    expect(inches.findings[0]!.message).toContain('1.5 mm')
    expect(inches.volumeMm3).toBeCloseTo(0.3, 12)
    const metres = measureMesh(box(1, 2, 1.5), 1000)
    expect(codes(metres)).toEqual(['unlikely-size'])
    expect(metres.findings[0]!.message).toContain('2,000 mm')
    expect(codes(measureMesh(box(0.5, 0.4, 1.5), 25.4))).toEqual([])
    expect(codes(measureMesh(box(1000, 2, 2), 1))).toEqual([])
  })
})
