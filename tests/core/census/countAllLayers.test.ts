import { describe, expect, test } from 'vitest'
import { placeMesh } from '../../../src/core/mesh/pose.ts'
import { PreweighError } from '../../../src/core/model/problem.ts'
import { POSE_AS_DRAWN } from '../../../src/core/model/settings.ts'
import { censusOf, relative } from '../../support/censusCase.ts'
import {
  box,
  cone,
  cubeWithHole,
  flip,
  merge,
  pickTriangles,
  prism,
  rotate,
  sphere,
  torus,
  translate,
  tube,
} from '../../support/meshes.ts'

describe('a box by hand arithmetic', () => {
  // Walls: what two 0.4 mm lines take all round. Skins: 4 layers below and 4 above, inside the
  // walls. Room: the rest.
  test.each([
    [20, 20, 20],
    [12, 12, 5],
    [168, 20, 14],
    [136, 98, 4],
    [6, 40, 3],
  ])('%s × %s × %s mm', (w, d, h) => {
    const census = censusOf(box(w, d, h))
    const inside = (w - 1.6) * (d - 1.6)
    expect(relative(census.modelMm3, w * d * h)).toBeLessThan(1e-9)
    expect(relative(census.wallMm3, (w * d - inside) * h)).toBeLessThan(1e-3)
    expect(relative(census.skinMm3, inside * 1.6)).toBeLessThan(1e-3)
    expect(relative(census.roomMm3, inside * (h - 1.6))).toBeLessThan(1e-3)
    expect(census.layers.count).toBe(Math.round(h / 0.2))
    expect(census.heightMm).toBeCloseTo(h, 9)
  })

  test('unequal skins lie where they should', () => {
    const { layers } = censusOf(box(20, 20, 4), { topSkins: 2, bottomSkins: 5 })
    const solid = [...layers.roomMm2].map((room) => room === 0)
    expect(solid).toEqual([...Array(20).keys()].map((i) => i < 5 || i >= 18))
  })

  test('no walls and no skins leave one room', () => {
    const census = censusOf(box(20, 20, 5), { walls: 0, topSkins: 0, bottomSkins: 0 })
    expect(census.wallMm3).toBeCloseTo(0, 9)
    expect(census.skinMm3).toBeCloseTo(0, 9)
    expect(relative(census.roomMm3, 2000)).toBeLessThan(1e-9)
  })

  test('the room of a box seen along its lines is its two far sides', () => {
    const { layers } = censusOf(box(30, 10, 4), { walls: 0 })
    // Even layers run along x and end on the two sides 10 mm long; odd ones on those 30 mm long.
    // The scan stands 3.7° askew.
    expect(relative(layers.roomSeenMm[8]!, 20)).toBeLessThan(0.25)
    expect(relative(layers.roomSeenMm[9]!, 60)).toBeLessThan(0.05)
    expect(relative(layers.roomWalkMm[9]!, 60)).toBeLessThan(0.05)
  })

  test.each([
    ['a box', box(30, 10, 4), 80],
    ['a disc', tube(12, 0.01, 4, 128), 2 * Math.PI * 12],
    ['a ring', tube(15, 9, 4, 128), 2 * Math.PI * 24],
    ['a box askew', placeMesh(rotate(box(50, 8, 4), [0, 0, 20]), 1, POSE_AS_DRAWN), 116],
  ])('the edge of the room of %s is its perimeter', (_, mesh, perimeterMm) => {
    const { layers } = censusOf(mesh, { walls: 0 })
    for (const layer of [8, 9]) {
      expect(relative(layers.roomEdgeMm[layer]!, perimeterMm)).toBeLessThan(0.015)
    }
  })
})

describe('Σ area × height meets the volume of smooth parts at 0.2 mm layers', () => {
  const sphereVolume = (4 / 3) * Math.PI * 10 ** 3
  test.each([
    ['sphere', sphere(10, 128), sphereVolume],
    ['lying torus', torus(20, 5, 192, 128), 2 * Math.PI ** 2 * 20 * 25],
    ['standing torus', rotate(torus(20, 5, 192, 128), [90, 0, 0]), 2 * Math.PI ** 2 * 20 * 25],
    ['cone', cone(10, 30, 256), (Math.PI * 100 * 30) / 3],
    ['tube 10 mm tall', tube(10, 8, 10, 256), Math.PI * 36 * 10],
  ])('%s', (_name, mesh, volume) => {
    expect(relative(censusOf(mesh).modelMm3, volume)).toBeLessThan(0.002)
  })
})

describe('a round outline in closed form', () => {
  test('walls of a tube are rings, its skins are rings too', () => {
    const census = censusOf(tube(15, 9, 10, 720))
    const ring = (outer: number, inner: number): number => Math.PI * (outer ** 2 - inner ** 2)
    expect(relative(census.wallMm3, (ring(15, 14.2) + ring(9.8, 9)) * 10)).toBeLessThan(1e-3)
    expect(relative(census.roomMm3, ring(14.2, 9.8) * (10 - 1.6))).toBeLessThan(1e-3)
    expect(census.layers.contours[20]).toBe(2)
    expect(census.layers.islands[20]).toBe(1)
    expect(census.layers.rooms[20]).toBe(1)
  })
})

describe('things too thin for their walls', () => {
  test('a sheet thinner than its walls is all wall and weighs what it is', () => {
    const census = censusOf(box(40, 1.2, 20), { walls: 3 })
    expect(relative(census.wallMm3, 960)).toBeLessThan(1e-9)
    expect(census.skinMm3 + census.roomMm3).toBeCloseTo(0, 6)
  })

  test('a needle finer than a line does not vanish', () => {
    expect(relative(censusOf(box(0.1, 0.1, 20)).wallMm3, 0.2)).toBeLessThan(1e-9)
  })

  test('a part lower than one layer is one layer', () => {
    const census = censusOf(box(10, 10, 0.05))
    expect(census.layers.count).toBe(1)
    expect(relative(census.modelMm3, 20)).toBeLessThan(1e-9)
  })

  test('a leftover room of under 16 line widths squared is skin, not infill', () => {
    const small = censusOf(box(3, 3, 10)).layers // 1.4 × 1.4 mm inside: 1.96 mm² < 2.56 mm²
    const large = censusOf(box(3.4, 3.4, 10)).layers // 1.8 × 1.8 mm inside: 3.24 mm²
    expect(small.roomMm2[20]).toBe(0)
    expect(large.roomMm2[20]).toBeCloseTo(3.24, 2)
  })
})

describe('meshes that are not one clean body', () => {
  test('overlapping bodies are counted once', () => {
    const census = censusOf(merge([box(20, 20, 10), translate(box(20, 20, 10), [10, 0, 0])]))
    expect(relative(census.modelMm3, 30 * 20 * 10)).toBeLessThan(1e-3)
  })

  test('an inside-out body is solid all the same', () => {
    expect(relative(censusOf(flip(box(20, 20, 10))).modelMm3, 4000)).toBeLessThan(1e-9)
    const mixed = merge([box(20, 20, 10), flip(translate(box(20, 20, 10), [30, 0, 0]))])
    expect(relative(censusOf(mixed).modelMm3, 8000)).toBeLessThan(1e-3)
  })

  test('a cavity stays hollow', () => {
    const hollow = merge([box(20, 20, 20), flip(translate(box(10, 10, 10), [5, 5, 5]))])
    expect(relative(censusOf(hollow).modelMm3, 7000)).toBeLessThan(1e-9)
  })

  test('one flipped triangle changes nothing', () => {
    const mesh = box(20, 20, 10)
    const indices = mesh.indices.slice()
    const last = indices.length - 1
    ;[indices[last], indices[last - 1]] = [indices[last - 1]!, indices[last]!]
    const census = censusOf({ positions: mesh.positions, indices })
    expect(relative(census.modelMm3, 4000)).toBeLessThan(1e-9)
  })

  test('a hole in the skin is bridged, and the doubt is said', () => {
    const mesh = sphere(10, 128)
    const census = censusOf(
      pickTriangles(mesh, (triangle, t) => (t > 8000 && t < 8200 ? [] : [triangle])),
    )
    expect(relative(census.modelMm3, (4 / 3) * Math.PI * 1000)).toBeLessThan(0.002)
    expect(census.doubtfulShare).toBeGreaterThan(0)
    expect(census.doubtfulShare).toBeLessThan(0.05)
    expect(censusOf(mesh).doubtfulShare).toBe(0)
  })

  test('a flat sheet encloses nothing and is refused', () => {
    const sheet = pickTriangles(box(20, 20, 10), (triangle, t) =>
      t === 0 || t === 2 ? [triangle] : [],
    )
    expect(() => censusOf(rotate(sheet, [90, 0, 0]))).toThrow(PreweighError)
  })
})

describe('the pose of a prism', () => {
  const plus = prism(
    [
      [4, 0],
      [8, 0],
      [8, 4],
      [12, 4],
      [12, 8],
      [8, 8],
      [8, 12],
      [4, 12],
      [4, 8],
      [0, 8],
      [0, 4],
      [4, 4],
    ],
    10,
  )

  test('turning about z changes wall, skin and room by less than 0.2 %', () => {
    const reference = censusOf(plus)
    for (const degrees of [10, 30, 45, 77.3, 90]) {
      const turned = censusOf(rotate(plus, [0, 0, degrees]))
      expect(relative(turned.wallMm3, reference.wallMm3)).toBeLessThan(2e-3)
      expect(relative(turned.skinMm3, reference.skinMm3)).toBeLessThan(2e-3)
      expect(relative(turned.roomMm3, reference.roomMm3)).toBeLessThan(2e-3)
    }
  })

  test('far from the origin it is the same part', () => {
    const near = censusOf(cubeWithHole(20, 5, 64))
    const far = censusOf(translate(cubeWithHole(20, 5, 64), [1e5, -1e5, 1e5]))
    expect(relative(far.wallMm3, near.wallMm3)).toBeLessThan(1e-4)
    expect(relative(far.modelMm3, near.modelMm3)).toBeLessThan(1e-7)
  })
})

describe('supports and brim', () => {
  /** A post 10 mm square and 20 tall with a 30 × 10 × 2 roof: 20 × 10 of it hangs over. */
  const gallows = merge([box(10, 10, 20), translate(box(30, 10, 2), [0, 0, 20])])

  test('a roof is held by columns down to the bed', () => {
    const census = censusOf(gallows, { supports: true })
    // The first 0.2 × tan 50° of the roof holds itself.
    expect(
      relative(census.supportMm3, (20 - 0.2 * Math.tan((50 * Math.PI) / 180)) * 10 * 20),
    ).toBeLessThan(0.01)
    expect(censusOf(gallows).supportMm3).toBe(0)
  })

  test('columns stand on the part where it is in the way', () => {
    const shelf = merge([gallows, translate(box(30, 10, 2), [0, 0, 8])])
    const census = censusOf(shelf, { supports: true })
    expect(relative(census.supportMm3, 19.76 * 10 * (10 + 8))).toBeLessThan(0.01)
  })

  test('a 45° cone upside down holds itself at 50° and not at 40°', () => {
    const flared = rotate(cone(10, 10, 128), [180, 0, 0])
    expect(censusOf(flared, { supports: true, supportAngleDeg: 50 }).supportMm3).toBeLessThan(1)
    expect(censusOf(flared, { supports: true, supportAngleDeg: 40 }).supportMm3).toBeGreaterThan(50)
  })

  test('a brim is a rim with round corners around the outside, not in holes', () => {
    const square = censusOf(box(20, 20, 5), { brimMm: 5 })
    expect(relative(square.brimMm3, (4 * 20 * 5 + Math.PI * 25) * 0.2)).toBeLessThan(1e-3)
    const holed = censusOf(cubeWithHole(20, 5, 64), { brimMm: 5 })
    expect(relative(holed.brimMm3, square.brimMm3)).toBeLessThan(1e-3)
  })
})

test('progress rises to 1', async () => {
  const { countAllLayers } = await import('../../../src/core/census/countAllLayers.ts')
  const { RECIPE_DEFAULTS } = await import('../../../src/core/model/settings.ts')
  const seen: number[] = []
  countAllLayers(box(10, 10, 10), RECIPE_DEFAULTS, (fraction) => seen.push(fraction))
  expect(seen.at(-1)).toBe(1)
  expect(seen).toEqual([...seen].sort((a, b) => a - b))
})
