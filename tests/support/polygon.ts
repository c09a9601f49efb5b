export type Point = readonly [x: number, y: number]
export type Loop = readonly Point[]

/** Twice the signed area of the triangle a, b, c: positive when they turn left. */
const turn = (a: Point, b: Point, c: Point) =>
  (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])

/** Signed area of a polygon: positive when it runs counter-clockwise (the surveyor's formula). */
export function loopArea(loop: Loop): number {
  let twice = 0
  for (let i = 0; i < loop.length; i++) {
    const [x1, y1] = loop[i]!
    const [x2, y2] = loop[(i + 1) % loop.length]!
    twice += x1 * y2 - x2 * y1
  }
  return twice / 2
}

/** The loop running counter-clockwise, or clockwise. */
export function oriented(loop: Loop, counterClockwise: boolean): Loop {
  return loopArea(loop) > 0 === counterClockwise ? loop : loop.toReversed()
}

/** A circle of `segments` corners, counter-clockwise, corners on the circle. */
export function circle(radius: number, segments: number, x = 0, y = 0): Loop {
  return Array.from({ length: segments }, (_, i): Point => {
    const angle = (2 * Math.PI * i) / segments
    return [x + radius * Math.cos(angle), y + radius * Math.sin(angle)]
  })
}

/**
 * Cuts a polygon with holes into triangles by clipping ears; holes are first joined to the outside
 * by a bridge. `points` holds every corner; `loops` are corner numbers, the outside first and
 * counter- clockwise, holes clockwise. For test meshes only: quadratic.
 */
export function triangulate(points: readonly Point[], loops: readonly number[][]): number[] {
  const [outside, ...holes] = loops
  let ring = [...outside!]
  const rightmost = (hole: readonly number[]) => Math.max(...hole.map((i) => points[i]![0]))
  for (const hole of holes.toSorted((a, b) => rightmost(b) - rightmost(a))) {
    ring = joinHole(points, ring, hole, holes)
  }
  return clipEars(points, ring)
}

function joinHole(
  points: readonly Point[],
  ring: number[],
  hole: readonly number[],
  holes: readonly number[][],
): number[] {
  const start = hole.reduce(
    (best, i, at) => (points[i]![0] > points[hole[best]!]![0] ? at : best),
    0,
  )
  const from = points[hole[start]!]!
  const loops = [ring, ...holes]
  const byDistance = ring
    .map((corner, at) => ({ at, point: points[corner]! }))
    .toSorted((a, b) => distance(a.point, from) - distance(b.point, from))
  const target = byDistance.find(
    ({ at, point }) =>
      insideCorner(points, ring, at, from) && !crossesAny(points, loops, from, point),
  )
  if (!target)
    throw new Error('No corner can be seen from the hole: are the loops simple and apart?')
  const turned = [...hole.slice(start), ...hole.slice(0, start)]
  const { at } = target
  return [...ring.slice(0, at + 1), ...turned, turned[0]!, ring[at]!, ...ring.slice(at + 1)]
}

const distance = (a: Point, b: Point) => Math.hypot(a[0] - b[0], a[1] - b[1])

/**
 * Does the way from ring corner `at` to `to` start into the polygon? Tells the two copies at a
 * bridge apart.
 */
function insideCorner(points: readonly Point[], ring: readonly number[], at: number, to: Point) {
  const corner = points[ring[at]!]!
  const before = points[ring[(at + ring.length - 1) % ring.length]!]!
  const after = points[ring[(at + 1) % ring.length]!]!
  const leftOfBoth = turn(before, corner, to) > 0 && turn(corner, after, to) > 0
  const leftOfOne = turn(before, corner, to) > 0 || turn(corner, after, to) > 0
  return turn(before, corner, after) > 0 ? leftOfBoth : leftOfOne
}

function crossesAny(
  points: readonly Point[],
  loops: readonly (readonly number[])[],
  a: Point,
  b: Point,
) {
  const same = (p: Point, q: Point) => p[0] === q[0] && p[1] === q[1]
  return loops.some((loop) =>
    loop.some((corner, i) => {
      const c = points[corner]!
      const d = points[loop[(i + 1) % loop.length]!]!
      if (same(c, a) || same(c, b) || same(d, a) || same(d, b)) return false
      return turn(a, b, c) * turn(a, b, d) <= 0 && turn(c, d, a) * turn(c, d, b) <= 0
    }),
  )
}

function clipEars(points: readonly Point[], start: readonly number[]): number[] {
  const ring = [...start]
  const triangles: number[] = []
  let at = 0
  let misses = 0
  while (ring.length > 3) {
    at %= ring.length
    const before = (at + ring.length - 1) % ring.length
    const after = (at + 1) % ring.length
    if (isEar(points, ring, before, at, after)) {
      triangles.push(ring[before]!, ring[at]!, ring[after]!)
      ring.splice(at, 1)
      // Stepping over one corner keeps the triangles from all fanning out of a single one.
      at += 1
      misses = 0
    } else {
      at += 1
      misses += 1
      if (misses > ring.length) throw new Error('The polygon crosses itself: no ear left to clip.')
    }
  }
  triangles.push(...ring)
  return triangles
}

function isEar(
  points: readonly Point[],
  ring: readonly number[],
  before: number,
  at: number,
  after: number,
) {
  const a = points[ring[before]!]!
  const b = points[ring[at]!]!
  const c = points[ring[after]!]!
  const area = turn(a, b, c)
  const longest = Math.max(distance(a, b), distance(b, c), distance(c, a))
  if (area <= 1e-12 * longest * longest) return false
  return ring.every((corner) => {
    const p = points[corner]!
    if (p === a || p === b || p === c) return true
    return turn(a, b, p) < 0 || turn(b, c, p) < 0 || turn(c, a, p) < 0
  })
}
