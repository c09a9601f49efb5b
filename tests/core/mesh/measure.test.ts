import fc from 'fast-check'
import Module from 'manifold-3d'
import { beforeAll, describe, expect, it } from 'vitest'
import { measureMesh } from '../../../src/core/mesh/measure.ts'
import type { Mesh } from '../../../src/core/model/mesh.ts'
import {
  box,
  circle,
  cone,
  cubeWithHole,
  flip,
  merge,
  meshOf,
  mirror,
  pickTriangles,
  prism,
  relabelVertices,
  rotate,
  scale,
  shuffleTriangles,
  single,
  sphere,
  tetrahedron,
  torus,
  translate,
  tube,
  type Loop,
  type Point,
} from '../../support/meshes.ts'
import { seededRandom } from '../../support/random.ts'

/** Area of a regular n-gon with its corners on a circle of radius r. */
const polygonArea = (n: number, r: number) => (n / 2) * r * r * Math.sin((2 * Math.PI) / n)

/** What turning something in n straight steps instead of smoothly leaves of its volume. */
const turningShare = (n: number) => polygonArea(n, 1) / Math.PI

/*
 * Solids with a closed form. `exact` is the volume of the faceted solid itself: Pappus and frustum
 * formulas times the share that turning in straight steps leaves. `smooth` is the handbook volume of
 * the true solid (Bronshtein and Semendyayev, Handbook of Mathematics, solids).
 */
const SOLIDS: readonly {
  name: string
  mesh: Mesh
  exact: number
  smooth: number
  within: number
}[] = [
  {
    name: 'ball',
    mesh: sphere(10, 64),
    exact: turningShare(64) * turnedBall(10, 32),
    smooth: (4 / 3) * Math.PI * 10 ** 3,
    within: 5e-3,
  },
  {
    name: 'torus',
    mesh: torus(30, 8, 48, 32),
    exact: turningShare(48) * 2 * Math.PI * 30 * polygonArea(32, 8),
    smooth: 2 * Math.PI ** 2 * 30 * 8 ** 2,
    within: 1e-2,
  },
  {
    name: 'cone',
    mesh: cone(9, 20, 256),
    exact: (polygonArea(256, 9) * 20) / 3,
    smooth: (Math.PI * 9 ** 2 * 20) / 3,
    within: 1.1e-4,
  },
  {
    name: 'tetrahedron',
    mesh: tetrahedron(12),
    exact: 12 ** 3 / (6 * Math.SQRT2),
    smooth: 12 ** 3 / (6 * Math.SQRT2),
    within: 1e-12,
  },
  {
    name: 'tube',
    mesh: tube(12, 9, 40, 96),
    exact: 40 * (polygonArea(96, 12) - polygonArea(96, 9)),
    smooth: 40 * Math.PI * (12 ** 2 - 9 ** 2),
    within: 1e-3,
  },
  {
    name: 'cube with a hole',
    mesh: cubeWithHole(20, 4, 128),
    exact: 20 * (400 - polygonArea(128, 4)),
    smooth: 20 * (400 - Math.PI * 16),
    within: 1e-4,
  },
]

/**
 * A half circle of `bands` straight steps, corners on the circle, turned smoothly: a stack of
 * frustums.
 */
function turnedBall(radius: number, bands: number): number {
  let sum = 0
  for (let band = 0; band < bands; band++) {
    const [a, b] = [(Math.PI * band) / bands, (Math.PI * (band + 1)) / bands]
    const [r1, r2] = [radius * Math.sin(a), radius * Math.sin(b)]
    const height = radius * (Math.cos(a) - Math.cos(b))
    sum += (Math.PI / 3) * height * (r1 * r1 + r1 * r2 + r2 * r2)
  }
  return sum
}

const relative = (value: number, expected: number) => Math.abs(value / expected - 1)

describe.each(SOLIDS)('a $name', ({ mesh, exact, smooth, within }) => {
  const volume = (changed: Mesh, scaleToMm = 1) => measureMesh(changed, scaleToMm).volumeMm3
  const random = seededRandom(5)

  it('holds what the closed form says', () => {
    const measured = measureMesh(mesh, 1)
    expect(relative(measured.volumeMm3, exact)).toBeLessThan(1e-12)
    expect(relative(measured.volumeMm3, smooth)).toBeLessThan(within)
    expect(measured.watertight).toBe(true)
    expect(measured.bodies).toBe(1)
    expect(measured.findings).toEqual([])
  })

  it('holds as much turned, far from the origin, shuffled, renumbered or mirrored', () => {
    expect(relative(volume(rotate(mesh, [33, -71, 120])), exact)).toBeLessThan(1e-12)
    // 1e5 mm away a double steps by 1.5e-11 mm: what is left after that is measured, not lost in
    // the sum.
    expect(relative(volume(translate(mesh, [1e5, -1e5, 1e5])), exact)).toBeLessThan(1e-11)
    expect(relative(volume(shuffleTriangles(mesh, random)), exact)).toBeLessThan(1e-12)
    expect(relative(volume(relabelVertices(mesh, random)), exact)).toBeLessThan(1e-12)
    expect(relative(volume(mirror(mesh)), exact)).toBeLessThan(1e-12)
  })

  it('grows with the cube of its size, its area with the square', () => {
    const area = measureMesh(mesh, 1).areaMm2
    expect(relative(volume(scale(mesh, 3.7)), 3.7 ** 3 * exact)).toBeLessThan(1e-12)
    expect(relative(volume(mesh, 25.4), 25.4 ** 3 * exact)).toBeLessThan(1e-12)
    expect(relative(measureMesh(mesh, 25.4).areaMm2, 25.4 ** 2 * area)).toBeLessThan(1e-12)
  })

  it('keeps its volume inside out and with every third triangle turned over', () => {
    expect(relative(volume(flip(mesh)), exact)).toBeLessThan(1e-12)
    const mixed = pickTriangles(mesh, ([a, b, c], t) => [t % 3 === 0 ? [a, c, b] : [a, b, c]])
    expect(relative(volume(mixed), exact)).toBeLessThan(1e-12)
  })
})

describe('measureMesh', () => {
  it('gives area, bounds and counts of a box in millimetres', () => {
    expect(measureMesh(translate(box(2, 3, 4), [1, 1, 1]), 10)).toEqual({
      triangles: 12,
      vertices: 8,
      bodies: 1,
      volumeMm3: 24_000,
      areaMm2: 5200,
      boundsMm: { min: [10, 10, 10], max: [30, 40, 50] },
      watertight: true,
      findings: [],
    })
  })

  it('leaves vertices that no triangle uses out of the bounds', () => {
    const { positions, indices } = box(2, 3, 4)
    const mesh = { positions: Float64Array.from([...positions, 99, 99, 99]), indices }
    expect(measureMesh(mesh, 1).boundsMm.max).toEqual([2, 3, 4])
  })

  it('closes flat gaps flat: a box without its lid, a tube without its ends', () => {
    const lidless = pickTriangles(box(4, 5, 6), (triangle) =>
      triangle.every((vertex) => vertex >= 4) ? [] : [triangle],
    )
    expect(measureMesh(lidless, 1).volumeMm3).toBeCloseTo(120, 9)
    const far = measureMesh(translate(lidless, [1e4, 1e4, 1e4]), 1)
    expect(far.volumeMm3).toBeCloseTo(120, 6)
    const pipe = pickTriangles(prism(circle(3, 12), 10), (triangle) =>
      triangle.every((v) => v >= 12) || triangle.every((v) => v < 12) ? [] : [triangle],
    )
    expect(measureMesh(pipe, 1).volumeMm3).toBeCloseTo(10 * polygonArea(12, 3), 9)
    expect(measureMesh(pipe, 1).watertight).toBe(false)
  })

  it('refuses what cannot be measured, in words', () => {
    const sheet = meshOf(
      [
        [0, 0, 0],
        [9, 0, 0],
        [0, 9, 0],
        [9, 9, 0],
      ],
      [0, 1, 2, 1, 3, 2],
    )
    const both = merge([sheet, flip(sheet)])
    expect(() => measureMesh(meshOf([], []), 1)).toThrow('0 triangles')
    expect(() => measureMesh(sheet, 1)).toThrow('enclose no volume')
    expect(() => measureMesh(both, 1)).toThrow('enclose no volume')
    const one = meshOf(
      [
        [0, 0, 0],
        [9, 0, 0],
        [0, 9, 0],
      ],
      [0, 1, 2],
    )
    expect(() => measureMesh(one, 1)).toThrow('is a single triangle')
    const broken = box(1, 1, 1)
    broken.positions[7] = NaN
    expect(() => measureMesh(broken, 1)).toThrow('Coordinate y of vertex 3 is NaN')
  })
})

/** A ball pushed in and out: closed, star-shaped, different for each seed. */
function blob(seed: number): Mesh {
  const random = seededRandom(seed)
  const { positions, indices } = sphere(10, 24)
  const pushed = positions.map((value) => value)
  for (let i = 0; i < pushed.length; i += 3) {
    const factor = 0.6 + 0.8 * random()
    for (let k = 0; k < 3; k++) pushed[i + k]! *= factor
  }
  return { positions: pushed, indices }
}

/** A star-shaped outline with a square hole round its middle. */
function starPrism(seed: number): Mesh {
  const random = seededRandom(seed)
  const corners = 3 + Math.floor(random() * 20)
  const outline: Loop = circle(1, Math.max(corners, 5)).map((point): Point => {
    const radius = 6 + 6 * random()
    return [point[0] * radius, point[1] * radius]
  })
  return prism(outline, 1 + 9 * random(), random() < 0.5 ? [] : [circle(1 + random(), 4, 0.3, 0.2)])
}

describe('measured beside manifold-3d, a reference library for closed meshes', () => {
  let library: Awaited<ReturnType<typeof Module>>
  beforeAll(async () => {
    library = await Module()
    library.setup()
  })

  /** Volume and area of a single-precision closed mesh, by the library. */
  function byLibrary(mesh: Mesh) {
    const solid = new library.Manifold(
      new library.Mesh({
        numProp: 3,
        vertProperties: Float32Array.from(mesh.positions),
        triVerts: mesh.indices,
      }),
    )
    const sums = { volume: solid.volume(), area: solid.surfaceArea() }
    solid.delete()
    return sums
  }

  /**
   * The larger relative difference of volume and area; NaN, which no comparison passes, if we think
   * the mesh is open. Both sum in double precision from the same single-precision corners.
   */
  function difference(mesh: Mesh): number {
    const measured = measureMesh(mesh, 1)
    const expected = byLibrary(mesh)
    if (!measured.watertight) return NaN
    return Math.max(
      relative(measured.volumeMm3, expected.volume),
      relative(measured.areaMm2, expected.area),
    )
  }

  it('agrees on the solids with a closed form', () => {
    for (const { mesh } of SOLIDS) {
      expect(difference(single(rotate(mesh, [10, 20, 30])))).toBeLessThan(1e-6)
    }
  })

  it('agrees on blobs and on prisms with holes (seed 7)', () => {
    fc.assert(
      fc.property(fc.nat(1e6), (seed) => {
        expect(difference(single(blob(seed)))).toBeLessThan(1e-6)
        expect(difference(single(starPrism(seed)))).toBeLessThan(1e-6)
      }),
      { seed: 7, numRuns: 60 },
    )
  })

  it('agrees on hulls of random points (seed 8)', () => {
    const coordinate = fc.double({ min: -50, max: 50, noNaN: true })
    fc.assert(
      fc.property(
        fc.array(fc.tuple(coordinate, coordinate, coordinate), { minLength: 8, maxLength: 60 }),
        (points) => {
          const hull = library.Manifold.hull(points.map((p): [number, number, number] => [...p]))
          // Points that happen to lie in a plane have no hull worth measuring.
          fc.pre(hull.volume() > 1)
          const { vertProperties, triVerts } = hull.getMesh()
          hull.delete()
          expect(difference({ positions: vertProperties, indices: triVerts })).toBeLessThan(1e-6)
        },
      ),
      { seed: 8, numRuns: 60 },
    )
  })

  it('agrees on a part with pockets and holes cut by the library', () => {
    const plate = library.Manifold.cube([80, 40, 6], true)
    const cutters = [-30, -10, 10, 30].map((x) =>
      library.Manifold.cylinder(20, 3, 3, 48, true).translate([x, 5, 0]),
    )
    const pocket = library.Manifold.cube([50, 12, 4], true).translate([0, -10, 2])
    const cut = library.Manifold.difference([plate, ...cutters, pocket])
    const { vertProperties, triVerts } = cut.getMesh()
    for (const solid of [plate, ...cutters, pocket, cut]) solid.delete()
    expect(difference({ positions: vertProperties, indices: triVerts })).toBeLessThan(1e-6)
  })
})

describe('whatever the closed mesh (seed 9)', () => {
  const turn = fc.tuple(
    ...([0, 1, 2].map(() => fc.integer({ min: -180, max: 180 })) as [
      fc.Arbitrary<number>,
      fc.Arbitrary<number>,
      fc.Arbitrary<number>,
    ]),
  )

  it('turning, moving, shuffling, renumbering and turning over leave volume and area', () => {
    fc.assert(
      fc.property(fc.nat(1e6), turn, (seed, degrees) => {
        const random = seededRandom(seed)
        const mesh = random() < 0.5 ? blob(seed) : starPrism(seed)
        const moved = translate(rotate(mesh, degrees), [1000 * random(), -500, 3])
        const jumbled = relabelVertices(shuffleTriangles(moved, random), random)
        const mixed = pickTriangles(jumbled, ([a, b, c]) => [
          random() < 0.5 ? [a, b, c] : [a, c, b],
        ])
        const plain = measureMesh(mesh, 1)
        for (const changed of [jumbled, flip(jumbled), mixed]) {
          const measured = measureMesh(changed, 1)
          expect(relative(measured.volumeMm3, plain.volumeMm3)).toBeLessThan(1e-11)
          expect(relative(measured.areaMm2, plain.areaMm2)).toBeLessThan(1e-11)
          expect(measured.bodies).toBe(1)
        }
      }),
      { seed: 9, numRuns: 60 },
    )
  })

  it("two bodies apart hold the sum of both, one in the other's hollow too", () => {
    fc.assert(
      fc.property(fc.nat(1e6), fc.nat(1e6), (one, other) => {
        const [a, b] = [blob(one), blob(other)]
        const sum = measureMesh(a, 1).volumeMm3 + measureMesh(b, 1).volumeMm3
        const apart = measureMesh(merge([a, translate(b, [40, 0, 0])]), 1)
        expect(relative(apart.volumeMm3, sum)).toBeLessThan(1e-11)
        const hollow = merge([scale(a, 9), flip(scale(a, 5)), b])
        const expected =
          (9 ** 3 - 5 ** 3) * measureMesh(a, 1).volumeMm3 + measureMesh(b, 1).volumeMm3
        expect(relative(measureMesh(hollow, 1).volumeMm3, expected)).toBeLessThan(1e-11)
      }),
      { seed: 10, numRuns: 60 },
    )
  })
})
