import type { Mesh } from '../model/mesh.ts'

/** Directions whose farthest vertices are looked for first, so that few are sorted. */
const DIRECTIONS = 64

/**
 * Convex hull of a mesh seen from above: x, y pairs, counter-clockwise. Andrew's monotone chain.
 */
export function hullOf({ positions, indices }: Mesh): Float64Array {
  const points = sortedPoints(positions, indices)
  const half = (list: readonly Point[]): Point[] => {
    const chain: Point[] = []
    for (const p of list) {
      while (chain.length >= 2 && turn(chain.at(-2), chain.at(-1), p) <= 0) chain.pop()
      chain.push(p)
    }
    return chain.slice(0, -1)
  }
  const hull = [...half(points), ...half(points.toReversed())]
  return Float64Array.from((hull.length > 0 ? hull : points).flat())
}

/** Size and least corner of a hull turned by an angle. */
export function turnedBox(hullMm: Float64Array, turnDeg: number) {
  const [sine, cosine] = sineCosine(turnDeg)
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity]
  for (let i = 0; i + 1 < hullMm.length; i += 2) {
    const px = hullMm[i] ?? 0
    const py = hullMm[i + 1] ?? 0
    const x = cosine * px - sine * py
    const y = sine * px + cosine * py
    minX = Math.min(minX, x)
    maxX = Math.max(maxX, x)
    minY = Math.min(minY, y)
    maxY = Math.max(maxY, y)
  }
  return { minX, minY, widthMm: maxX - minX, depthMm: maxY - minY }
}

/** Exact at quarter turns. */
export function sineCosine(degrees: number): readonly [sine: number, cosine: number] {
  const quarter = degrees / 90
  if (Number.isInteger(quarter)) {
    const at = ((quarter % 4) + 4) % 4
    return [[0, 1, 0, -1][at] ?? 0, [1, 0, -1, 0][at] ?? 1]
  }
  const radians = (degrees * Math.PI) / 180
  return [Math.sin(radians), Math.cos(radians)]
}

type Point = readonly [x: number, y: number]

function turn(a: Point | undefined, b: Point | undefined, c: Point): number {
  if (a === undefined || b === undefined) return 1
  return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])
}

/** By x, then y, each once; of a large mesh without those well inside. */
function sortedPoints(positions: Mesh['positions'], indices: Uint32Array): readonly Point[] {
  const used = new Uint8Array(positions.length / 3)
  for (const index of indices) used[index] = 1
  const at = (v: number): Point => [positions[3 * v] ?? 0, positions[3 * v + 1] ?? 0]
  const all: number[] = []
  used.forEach((is, v) => {
    if (is === 1) all.push(v)
  })
  const wanted = all.length > 20 * DIRECTIONS ? outermost(all, at) : all
  const points = wanted.map(at).toSorted((a, b) => a[0] - b[0] || a[1] - b[1])
  return points.filter(
    (p, i) => i === 0 || p[0] !== points[i - 1]?.[0] || p[1] !== points[i - 1]?.[1],
  )
}

/**
 * Vertices outside the polygon of the farthest ones in a few directions, and those themselves: the
 * hull has no others.
 */
function outermost(all: readonly number[], at: (v: number) => Point): readonly number[] {
  const far = Array.from({ length: DIRECTIONS }, (_, k) => {
    const [sine, cosine] = sineCosine((360 * k) / DIRECTIONS)
    let best = all[0] ?? 0
    let most = -Infinity
    for (const v of all) {
      const [x, y] = at(v)
      const reach = cosine * x + sine * y
      if (reach > most) [most, best] = [reach, v]
    }
    return best
  })
  const ring = far.map(at)
  const outside = all.filter((v) => {
    const p = at(v)
    return ring.some((a, i) => {
      const b = ring[(i + 1) % ring.length]
      return b !== undefined && (a[0] !== b[0] || a[1] !== b[1]) && turn(a, b, p) <= 0
    })
  })
  return [...new Set([...far, ...outside])]
}
