import type { Mesh } from '../model/mesh.ts'
import type { DrillRow } from './types.ts'

/** One hole of a coupon. mm */
export interface CouponHole {
  readonly lies: 'upright' | 'level'
  /** As drawn, through the corners; between its flats. */
  readonly diameterMm: number
  readonly clearMm: number
}

export interface Coupon {
  readonly mesh: Mesh
  /** Row by row from the lower left, beside the blank end, as seen on the bed or from the front. */
  readonly holes: readonly CouponHole[]
}

/**
 * So many sides that the polygon takes off a thousandth; a multiple of 8, so that corners of cells
 * have a point.
 */
const SIDES = 64
/** From one hole of a row to the next. */
const STEP_MM = 0.1
const STEPS = 5
/** More sizes than this make a plate of its own. */
const MOST_SIZES = 6
/** Of solid between two holes. */
const ROOM_MM = 4
const THICK_MM = { upright: 4, level: 6 } as const
const APART_MM = 8
const SAME_MM = 0.05

/** Holes that lie one way, a row a size. */
interface Plate {
  readonly lies: CouponHole['lies']
  readonly diametersMm: readonly (readonly number[])[]
}

/**
 * The holes of a small print with the frame's own: each diameter that is drilled somewhere, and
 * from it on by tenths of a millimetre; none where nothing is drilled.
 */
export function couponHoles(rows: readonly DrillRow[]): readonly CouponHole[] {
  return platesOf(rows).flatMap(({ lies, diametersMm }) =>
    diametersMm
      .flat()
      .map((diameterMm) => ({ lies, diameterMm, clearMm: diameterMm * Math.cos(Math.PI / SIDES) })),
  )
}

/**
 * That print: upright holes in a plate, lying ones in a plate on its edge. Each row begins at a
 * blank end. Null where nothing is drilled.
 */
export function couponFor(rows: readonly DrillRow[]): Coupon | null {
  const plates = platesOf(rows)
  if (plates.length === 0) return null
  const positions: number[] = []
  const indices: number[] = []
  let deepMm = 0
  for (const { lies, diametersMm } of plates) {
    const cellMm = Math.max(...diametersMm.flat()) + ROOM_MM
    const thickMm = THICK_MM[lies]
    const plate = pullUp(flatPlate(diametersMm, cellMm), thickMm)
    const first = positions.length / 3
    for (let v = 0; v < plate.positions.length; v += 3) {
      const [x = 0, y = 0, z = 0] = plate.positions.subarray(v, v + 3)
      // A plate on its edge: what was up looks to the front.
      if (lies === 'upright') positions.push(x, deepMm + y, z)
      else positions.push(x, deepMm + thickMm - z, y)
    }
    for (const index of plate.indices) indices.push(first + index)
    deepMm += (lies === 'upright' ? cellMm * diametersMm.length : thickMm) + APART_MM
  }
  return {
    mesh: { positions: Float64Array.from(positions), indices: Uint32Array.from(indices) },
    holes: couponHoles(rows),
  }
}

function platesOf(rows: readonly DrillRow[]): readonly Plate[] {
  return (['upright', 'level'] as const).flatMap((lies) => {
    const diametersMm = sizesOf(rows, lies).map((size) =>
      Array.from({ length: STEPS }, (_, i) => Math.round(10 * (size + i * STEP_MM)) / 10),
    )
    return diametersMm.length === 0 ? [] : [{ lies, diametersMm }]
  })
}

/** The most common first, then in order. */
function sizesOf(rows: readonly DrillRow[], lies: CouponHole['lies']): readonly number[] {
  const counts = new Map<number, number>()
  for (const row of rows) {
    if (row.lies !== lies || row.wantedMm === null || row.hole.shape !== 'round') continue
    const size = Math.round(row.diameterMm / (2 * SAME_MM)) * 2 * SAME_MM
    const rounded = Math.round(10 * size) / 10
    counts.set(rounded, (counts.get(rounded) ?? 0) + 1)
  }
  return [...counts]
    .toSorted(([, a], [, b]) => b - a)
    .slice(0, MOST_SIZES)
    .map(([size]) => size)
    .toSorted((a, b) => a - b)
}

interface Flat {
  readonly points: readonly (readonly [x: number, y: number])[]
  readonly triangles: readonly (readonly [number, number, number])[]
}

/**
 * Square cells, each with a hole or, at the blank end, without; cells share the points of their
 * sides.
 */
function flatPlate(diameters: readonly (readonly number[])[], cellMm: number): Flat {
  const points: (readonly [number, number])[] = []
  const known = new Map<string, number>()
  const triangles: (readonly [number, number, number])[] = []
  const add = (x: number, y: number): number => {
    const key = `${Math.round(1e6 * x)} ${Math.round(1e6 * y)}`
    const before = known.get(key)
    if (before !== undefined) return before
    known.set(key, points.length)
    return points.push([x, y]) - 1
  }
  diameters.forEach((row, r) => {
    for (const [c, diameterMm] of [0, ...row].entries()) {
      const [x, y] = [(c + 0.5) * cellMm, (r + 0.5) * cellMm]
      const ring = (reach: (cos: number, sin: number) => number): readonly number[] =>
        Array.from({ length: SIDES }, (_, i) => {
          const angle = (2 * Math.PI * i) / SIDES
          const [cos, sin] = [Math.cos(angle), Math.sin(angle)]
          const by = reach(cos, sin)
          return add(x + by * cos, y + by * sin)
        })
      const outer = ring((cos, sin) => cellMm / 2 / Math.max(Math.abs(cos), Math.abs(sin)))
      const inner = diameterMm === 0 ? outer.map(() => add(x, y)) : ring(() => diameterMm / 2)
      outer.forEach((a, i) => {
        const next = (i + 1) % SIDES
        const [b = 0, c2 = 0, d = 0] = [outer[next], inner[next], inner[i]]
        triangles.push([a, b, c2])
        if (c2 !== d) triangles.push([a, c2, d])
      })
    }
  })
  return { points, triangles }
}

/** Pulled up from 0: a top, a bottom, and a wall along every side that only one triangle has. */
function pullUp(
  { points, triangles }: Flat,
  heightMm: number,
): { positions: Float64Array; indices: number[] } {
  const count = points.length
  const positions = Float64Array.from(
    [0, heightMm].flatMap((z) => points.flatMap(([x, y]) => [x, y, z])),
  )
  const sides = new Set(triangles.flatMap(([a, b, c]) => [`${a} ${b}`, `${b} ${c}`, `${c} ${a}`]))
  const indices = triangles.flatMap(([a, b, c]) => [a + count, b + count, c + count, c, b, a])
  for (const [a, b, c] of triangles) {
    for (const [from, to] of [
      [a, b],
      [b, c],
      [c, a],
    ] as const) {
      if (sides.has(`${to} ${from}`)) continue
      indices.push(from, to, to + count, from, to + count, from + count)
    }
  }
  return { positions, indices }
}
