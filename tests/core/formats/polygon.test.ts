import fc from 'fast-check'
import { expect, test } from 'vitest'
import { faceEffort, splitFace } from '../../../src/core/formats/polygon.ts'

const SEED = 20_252

type Point = readonly [number, number]

/** Puts a flat outline into space, on the plane z = x + 2y. */
function split(outline: readonly Point[], effort = faceEffort()): number[][] {
  const positions = Float64Array.from(outline.flatMap(([x, y]) => [x, y, x + 2 * y]))
  const triangles: number[][] = []
  splitFace(
    positions,
    Uint32Array.from(outline, (_, i) => i),
    effort,
    (...t) => triangles.push(t),
  )
  return triangles
}

/** The shoelace formula: twice the area is the sum of x·y' − x'·y round the outline. */
function area(outline: readonly Point[]): number {
  return (
    outline.reduce((sum, [x, y], i) => {
      const [nextX, nextY] = outline[(i + 1) % outline.length]!
      return sum + x * nextY - nextX * y
    }, 0) / 2
  )
}

function areas(outline: readonly Point[]): number[] {
  return split(outline).map((corners) => area(corners.map((i) => outline[i]!)))
}

const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0)

test('a square is two triangles that keep its winding', () => {
  const square: Point[] = [
    [0, 0],
    [2, 0],
    [2, 2],
    [0, 2],
  ]
  expect(areas(square)).toEqual([2, 2])
  expect(areas(square.toReversed())).toEqual([-2, -2])
})

test('an arrowhead, an L, a comb and a bridged hole are filled exactly once', () => {
  const shapes: Record<string, Point[]> = {
    arrowhead: [
      [0, 0],
      [4, 0],
      [1, 1],
      [0, 4],
    ],
    L: [
      [0, 0],
      [3, 0],
      [3, 1],
      [1, 1],
      [1, 3],
      [0, 3],
    ],
    comb: [
      [0, 0],
      [7, 0],
      [7, 5],
      [6, 5],
      [6, 1],
      [4, 1],
      [4, 5],
      [3, 5],
      [3, 1],
      [1, 1],
      [1, 5],
      [0, 5],
    ],
    'points on the sides': [
      [0, 0],
      [1, 0],
      [2, 0],
      [3, 0],
      [3, 2],
      [3, 3],
      [1, 3],
      [0, 3],
      [0, 1],
    ],
    // The outer square, a bridge to the hole, the hole the other way round, and back over the
    // bridge.
    'bridged hole': [
      [0, 0],
      [9, 0],
      [9, 9],
      [0, 9],
      [0, 0],
      [3, 3],
      [3, 6],
      [6, 6],
      [6, 3],
      [3, 3],
    ],
  }
  for (const [title, shape] of Object.entries(shapes)) {
    for (let turn = 0; turn < shape.length; turn++) {
      const turned = [...shape.slice(turn), ...shape.slice(0, turn)]
      const parts = areas(turned)
      expect(parts, title).toHaveLength(shape.length - 2)
      expect(Math.min(...parts), `${title} from corner ${turn}`).toBeGreaterThan(0)
      expect(sum(parts), title).toBeCloseTo(area(shape), 12)
    }
  }
})

test('a pentagram, which crosses itself, still has its outline as its boundary', () => {
  const star = [0, 2, 4, 1, 3].map((k): Point => [Math.cos(1.2566 * k), Math.sin(1.2566 * k)])
  expect(sum(areas(star))).toBeCloseTo(area(star), 12)
})

test(`random outlines that see their middle are filled exactly once (seed ${SEED})`, () => {
  const outline = fc
    .array(fc.double({ min: 0.2, max: 9, noNaN: true }), { minLength: 4, maxLength: 60 })
    .map((radii) =>
      radii.map((r, i): Point => {
        const angle = (2 * Math.PI * i) / radii.length
        return [r * Math.cos(angle), r * Math.sin(angle)]
      }),
    )
  fc.assert(
    fc.property(outline, (points) => {
      const parts = areas(points)
      expect(parts).toHaveLength(points.length - 2)
      expect(Math.min(...parts)).toBeGreaterThan(-1e-9)
      expect(sum(parts)).toBeCloseTo(area(points), 9)
    }),
    { seed: SEED, numRuns: 500 },
  )
})

const LARGE: Record<string, readonly Point[]> = {
  gear: Array.from({ length: 20_000 }, (_, i) => round(50 - (i % 2), (2 * Math.PI * i) / 20_000)),
  spiral: [
    ...Array.from({ length: 10_000 }, (_, i) => round(3 + i / 100, (Math.PI * i) / 250)),
    ...Array.from({ length: 10_000 }, (_, i) => round(1 + i / 100, (Math.PI * i) / 250)).reverse(),
  ],
  comb: [
    [10_000, -1],
    ...Array.from({ length: 5000 }, (_, k) => 10_000 - 2 * k).flatMap((x): Point[] => [
      [x, 0],
      [x, 50],
      [x - 1, 50],
      [x - 1, 0],
    ]),
    [0, -1],
  ],
}

function round(radius: number, angle: number): Point {
  return [radius * Math.cos(angle), radius * Math.sin(angle)]
}

test.each(Object.entries(LARGE))(
  'a %s of 20,000 corners stays within the effort of a file',
  (_, shape) => {
    const effort = faceEffort()
    const parts = split(shape, effort).map((corners) => area(corners.map((i) => shape[i]!)))
    expect(Math.min(...parts)).toBeGreaterThan(0)
    expect(sum(parts)).toBeCloseTo(area(shape), 3)
    // Of all others steps are as good as free, so that a thousand gears are split as well as one.
    expect(effort.left).toBeGreaterThan(0)
    if (shape !== LARGE['comb']) expect(effort).toEqual(faceEffort())
  },
)

test('with no effort left a face still has its outline as its boundary', () => {
  const outline = LARGE['gear']!
  const triangles = split(outline, { left: -1e9 })
  expect(triangles).toHaveLength(outline.length - 2)
  const sides = new Map<string, number>()
  for (const [a = 0, b = 0, c = 0] of triangles) {
    for (const [from, to] of [
      [a, b],
      [b, c],
      [c, a],
    ] as const) {
      const key = `${Math.min(from, to)}-${Math.max(from, to)}`
      sides.set(key, (sides.get(key) ?? 0) + Math.sign(to - from))
    }
  }
  const n = outline.length
  const open = [...sides].filter(([, ways]) => ways !== 0).map(([key]) => key)
  const rim = outline.map((_, i) => (i + 1 < n ? `${i}-${i + 1}` : `0-${i}`))
  expect(open.toSorted()).toEqual(rim.toSorted())
})
