import { describe, expect, test } from 'vitest'
import { findHoles } from '../../../../src/core/mesh/holes/findHoles.ts'
import { findPatterns } from '../../../../src/core/mesh/holes/patterns.ts'
import type { Vec3 } from '../../../../src/core/model/mesh.ts'
import {
  box,
  circle,
  cubeWithHole,
  merge,
  meshOf,
  prism,
  rectangle,
  relabelVertices,
  rotate,
  scale,
  shuffleTriangles,
  single,
  sphere,
  torus,
  translate,
  tube,
  type Loop,
} from '../../../support/meshes.ts'
import { seededRandom } from '../../../support/random.ts'
import { boredPlate, straight, type Boring } from '../../../support/boredPlate.ts'

const plate = (places: readonly (readonly [number, number])[], radius = 1.6, segments = 32) =>
  prism(
    rectangle(60, 60),
    3,
    places.map(([x, y]) => circle(radius, segments, x + 30, y + 30)),
  )

const square = (side: number): [number, number][] =>
  [
    [-1, -1],
    [1, -1],
    [1, 1],
    [-1, 1],
  ].map(([x, y]) => [(x! * side) / 2, (y! * side) / 2])

const rectangleOf = (a: number, b: number): [number, number][] =>
  square(1).map(([x, y]) => [x * a, y * b])

describe('findHoles', () => {
  for (const segments of [8, 12, 32, 128]) {
    test(`finds a through hole of ${segments} facets at its size and place, however the part is turned`, () => {
      const turned = rotate(translate(cubeWithHole(20, 3, segments), [100, 50, -20]), [30, 40, 50])
      const holes = findHoles(turned)
      expect(holes).toHaveLength(1)
      const [hole] = holes
      expect(hole!.diameter).toBeCloseTo(6, 6)
      expect(hole!.depth).toBeCloseTo(20, 6)
      expect(hole!.through).toBe(true)
      expect(hole!.facets).toBe(2 * segments)
      const middle = rotate(
        translate({ ...box(1, 1, 1), positions: Float64Array.of(10, 10, 10) }, [100, 50, -20]),
        [30, 40, 50],
      ).positions
      expect(Math.hypot(...hole!.centre.map((value, k) => value - middle[k]!))).toBeLessThan(1e-6)
    })
  }

  test('tells a blind hole from a through hole', () => {
    // A ring on a disc of the same outline, sharing vertices only where they are equal: one welded
    // cup.
    const cup = merge([translate(tube(10, 3, 8, 32), [0, 0, 2])])
    expect(findHoles(cup)[0]!.through).toBe(true)
    const blind = blindHole()
    expect(findHoles(blind)).toMatchObject([{ through: false, depth: 6 }])
  })

  test('is blind to slots, hexagons, round outsides, fillets and balls', () => {
    const half = (from: number, y: number): Loop =>
      Array.from({ length: 17 }, (_, i) => {
        const angle = from + (Math.PI * i) / 16
        return [20 + 3 * Math.cos(angle), y + 3 * Math.sin(angle)]
      })
    const slot: Loop = [...half(0, 15), ...half(Math.PI, 9)]
    const hexagon = circle(3, 6, 8, 8)
    expect(findHoles(prism(rectangle(30, 30), 4, [slot, hexagon]))).toEqual([])
    expect(findHoles(prism(circle(10, 64), 5))).toEqual([])
    expect(findHoles(sphere(10, 48))).toEqual([])
    expect(findHoles(torus(20, 5, 64, 32))).toEqual([])
  })

  test('does not mind single precision, order of triangles or numbers of vertices', () => {
    const random = seededRandom(11)
    const part = plate(square(30.5))
    const mixed = single(relabelVertices(shuffleTriangles(part, random), random))
    expect(findHoles(mixed)).toHaveLength(4)
    for (const hole of findHoles(mixed)) expect(hole.diameter).toBeCloseTo(3.2, 4)
  })
})

/** By drawing: which ends a bore of each shape must have, from the top of a block of 10 down. */
const SHAPES: Record<
  string,
  Pick<Boring, 'rings' | 'through'> & { open: [radius: number, low: boolean, high: boolean][] }
> = {
  straight: { ...straight(0, 0, 2, 10, 0), open: [[2, true, true]] },
  blind: { rings: rings([0, 2], [6, 2]), through: false, open: [[2, false, true]] },
  'with a drill’s point': {
    rings: rings([0, 2], [6, 2], [7, 0.3]),
    through: false,
    open: [[2, false, true]],
  },
  counterbored: {
    rings: rings([0, 4], [4, 4], [4, 2], [10, 2]),
    through: true,
    open: [
      [4, true, true],
      [2, true, true],
    ],
  },
  'counterbored and blind': {
    rings: rings([0, 4], [4, 4], [4, 2], [8, 2]),
    through: false,
    open: [
      [4, false, true],
      [2, false, true],
    ],
  },
  countersunk: {
    rings: rings([0, 3.8], [1.8, 2], [10, 2]),
    through: true,
    open: [[2, true, true]],
  },
  'countersunk from a counterbore': {
    rings: rings([0, 5], [3, 5], [5, 2], [10, 2]),
    through: true,
    open: [
      [5, true, true],
      [2, true, true],
    ],
  },
  'wider inside, as a nut’s chamber': {
    rings: rings([0, 2], [4, 2], [4, 4], [7, 4]),
    through: false,
    open: [
      [2, false, true],
      [4, false, true],
    ],
  },
}

function rings(...all: [depth: number, radius: number][]): Boring['rings'] {
  return all
}

describe('open ends', () => {
  for (const [name, { open, ...shape }] of Object.entries(SHAPES)) {
    test.each([8, 16, 37, 128])(`of a bore ${name}, %i facets, turned any way`, (facets) => {
      const random = seededRandom(facets)
      const part = boredPlate(rectangle(40, 30), 10, [{ ...shape, facets, x: 12, y: 14 }])
      for (let turn = 0; turn < 4; turn++) {
        const degrees = [0, 1, 2].map(() => (turn === 0 ? 0 : 360 * random())) as [
          number,
          number,
          number,
        ]
        const up = rotate(meshOf([[0, 0, 1]], []), degrees).positions
        const holes = findHoles(single(rotate(translate(part, [3, -70, 20]), degrees)))
        const told = holes.map(({ axis, diameter, openLow, openHigh, through }) => {
          expect(through).toBe(openLow && openHigh)
          const isUp = axis[0] * up[0]! + axis[1] * up[1]! + axis[2] * up[2]! > 0
          return [diameter / 2, ...(isUp ? [openLow, openHigh] : [openHigh, openLow])] as const
        })
        const byRadius = told.toSorted((a, b) => b[0] - a[0])
        const expected = open.toSorted((a, b) => b[0] - a[0])
        expect(byRadius.map(([, ...ends]) => ends)).toEqual(expected.map(([, ...ends]) => ends))
        byRadius.forEach(([radius], i) => expect(radius).toBeCloseTo(expected[i]![0], 4))
      }
    })
  }

  test('a countersink’s cone is as high as drawn, a flat or a sloping mouth has none', () => {
    const sunk = boredPlate(rectangle(40, 30), 10, [
      { x: 9, y: 14, facets: 24, rings: rings([0, 3.8], [1.8, 2], [10, 2]), through: true },
      straight(25, 14, 2, 10, 24),
    ])
    const [countersunk, plain] = findHoles(sunk).toSorted((a, b) => a.centre[0] - b.centre[0])
    expect(countersunk!.flareHigh).toBeCloseTo(1.8, 9)
    expect(countersunk!.flareLow).toBe(0)
    expect(plain).toMatchObject({ flareLow: 0, flareHigh: 0 })
    // Its top leans by 27°.
    const sloping = boredPlate(rectangle(30, 30), 10, [straight(15, 15, 3, 10, 24)])
    for (let v = 0; v < sloping.positions.length; v += 3) {
      if (sloping.positions[v + 2]! > 5) sloping.positions[v + 2]! += sloping.positions[v]! / 2
    }
    expect(findHoles(sloping)).toMatchObject([{ flareLow: 0, flareHigh: 0, through: true }])
  })

  test('two blind bores on one axis with a thin web between are not through', () => {
    const pocket = boredPlate(rectangle(20, 20), 5, [
      { x: 10, y: 10, facets: 24, rings: rings([0, 4], [4.5, 4]), through: false },
    ])
    const below = translate(rotate(pocket, [180, 0, 0]), [0, 20, 0])
    expect(findHoles(merge([pocket, below]))).toMatchObject([
      { openLow: false, openHigh: true },
      { openLow: true, openHigh: false },
    ])
  })

  test('slivers of the wall beside it are no floor', () => {
    // At one end every facet of the wall ends in a narrow triangle that leans inwards by 3°.
    const part = boredPlate(rectangle(30, 30), 10, [straight(15, 15, 3, 10, 32)])
    const { positions } = part
    const points = Array.from({ length: part.positions.length / 3 }, (_, v): Vec3 => [
      positions[3 * v]!,
      positions[3 * v + 1]!,
      positions[3 * v + 2]!,
    ])
    const indices: number[] = []
    for (let t = 0; t < part.indices.length; t += 3) {
      const [a, b, c] = Array.from(part.indices.slice(t, t + 3)) as [number, number, number]
      const onWall = [a, b, c].every((v) => Math.hypot(points[v]![0] - 15, points[v]![1] - 15) < 4)
      const low = [a, b, c].filter((v) => points[v]![2] === 0)
      if (!onWall || low.length !== 2) {
        indices.push(a, b, c)
        continue
      }
      // Split at a point just above the rim and off the wall by 0.0005.
      const middle = (k: 0 | 1) => (points[low[0]!]![k] + points[low[1]!]![k]) / 2
      const [x, y] = [middle(0), middle(1)]
      const inwards = 0.0005 / Math.hypot(x - 15, y - 15)
      const tip = points.push([x + (15 - x) * inwards, y + (15 - y) * inwards, 0.01]) - 1
      indices.push(a, b, tip, b, c, tip, c, a, tip)
    }
    const holes = findHoles(meshOf(points, indices))
    for (const hole of holes) expect(hole).toMatchObject({ openLow: true, openHigh: true })
    expect(holes).toHaveLength(1)
  })
})

/** A block with a round hole that ends 4 above its bottom; walls and floor share vertices. */
function blindHole() {
  const n = 24
  const top = prism(rectangle(20, 20), 10, [circle(3, n, 10, 10)])
  // Lift the hole's lower rim to z = 4, close it by a fan, and close the bottom by a plain square.
  const positions = Float64Array.from(top.positions)
  const count = positions.length / 6
  for (let i = 4; i < count; i++) positions[3 * i + 2] = 4
  const walls: number[] = []
  for (let i = 0; i < top.indices.length; i += 3) {
    const corners = Array.from(top.indices.slice(i, i + 3))
    const bottomFace = corners.every((corner) => corner < count)
    if (!bottomFace) walls.push(...corners)
  }
  for (let i = 1; i + 1 < n; i++) walls.push(4, 4 + i, 4 + i + 1)
  walls.push(0, 2, 1, 0, 3, 2)
  const floor = { positions, indices: Uint32Array.from(walls) }
  // The fan must face up, whichever way the hole's loop runs.
  const [a, b, c] = [4, 5, 6].map((v) => [positions[3 * v]!, positions[3 * v + 1]!] as const)
  const up = (b![0] - a![0]) * (c![1] - a![1]) - (b![1] - a![1]) * (c![0] - a![0]) > 0
  if (!up) {
    const from = walls.length - 6 - 3 * (n - 2)
    for (let i = from; i < walls.length - 6; i += 3) {
      floor.indices[i + 1] = walls[i + 2]!
      floor.indices[i + 2] = walls[i + 1]!
    }
  }
  return floor
}

describe('findPatterns', () => {
  const names = (places: readonly (readonly [number, number])[], mm = 1, part = plate(places)) =>
    findPatterns(findHoles(part), mm).map((each) => `${each.name} ${each.layout}`)

  // Bolt circles by Pythagoras: 9→12.73, 12→16.97, 16→22.63, 19→26.87, 20→28.28, 25.5→36.06,
  // 30.5→43.13, 16×19→24.84, 19×25→31.40.
  const CIRCLES: readonly [number, number, number][] = [
    [9, 9, 12.73],
    [12, 12, 16.97],
    [16, 16, 22.63],
    [19, 19, 26.87],
    [20, 20, 28.28],
    [25.5, 25.5, 36.06],
    [30.5, 30.5, 43.13],
    [16, 19, 24.84],
    [19, 25, 31.4],
  ]
  for (const [a, b, circleMm] of CIRCLES) {
    test(`names four holes at ${a} × ${b} and gives their circle`, () => {
      const found = findPatterns(findHoles(plate(rectangleOf(a, b))), 1)
      expect(found).toHaveLength(1)
      expect(found[0]).toMatchObject({ name: `${a} × ${b}`, layout: 'rectangle' })
      expect(Math.abs(found[0]!.circleMm - circleMm)).toBeLessThan(0.01)
    })
  }

  test('allows 0.15 mm either way, and no more', () => {
    expect(names(square(30.36))).toEqual(['30.5 × 30.5 rectangle'])
    expect(names(square(30.64))).toEqual(['30.5 × 30.5 rectangle'])
    expect(names(square(30.3))).toEqual([])
    expect(names(square(30.7))).toEqual([])
  })

  test('never reports a 16 × 19 rectangle as a square', () => {
    expect(names(rectangleOf(16, 19))).toEqual(['16 × 19 rectangle'])
  })

  test('knows motor holes counted across the circle', () => {
    const cross: [number, number][] = [
      [-8, 0],
      [8, 0],
      [0, -9.5],
      [0, 9.5],
    ]
    expect(names(cross)).toEqual(['16 × 19 cross'])
  })

  test('works in any unit and for a part turned any way', () => {
    const inches = rotate(scale(plate(square(20)), 1 / 25.4), [20, 30, 40])
    expect(names([], 25.4, inches)).toEqual(['20 × 20 rectangle'])
    expect(names([], 1, inches)).toEqual([])
  })

  test('asks for four holes of one size', () => {
    expect(names(square(20).slice(1))).toEqual([])
    const odd = prism(
      rectangle(60, 60),
      3,
      square(20).map(([x, y], i) => circle(i === 0 ? 2.2 : 1.6, 32, x + 30, y + 30)),
    )
    expect(names([], 1, odd)).toEqual([])
  })
})
