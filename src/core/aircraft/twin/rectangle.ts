type Point = readonly [x: number, y: number]

/** The smallest rectangle round something flat. */
export interface LeastRectangle {
  readonly sidesMm: readonly [long: number, short: number]
  /** Of the longer side against x, 0 to 180. */
  readonly longDeg: number
}

/**
 * The smallest rectangle round points (x, y, stride 2, mm). One of its sides lies on a side of the
 * convex hull (Freeman and Shapira, Communications of the ACM 18, 1975, 409–413), so each hull side
 * is tried.
 */
export function leastRectangle(points: Float64Array): LeastRectangle {
  const hull = convexHull(points)
  let best: LeastRectangle = { sidesMm: [0, 0], longDeg: 0 }
  let least = Infinity
  hull.forEach(([x, y], i) => {
    const [nextX, nextY] = hull[(i + 1) % hull.length] ?? [x, y]
    const length = Math.hypot(nextX - x, nextY - y)
    if (length === 0) return
    const sides = extent(hull, (nextX - x) / length, (nextY - y) / length)
    if (sides[0] * sides[1] < least) {
      least = sides[0] * sides[1]
      const sideDeg = (Math.atan2(nextY - y, nextX - x) * 180) / Math.PI
      const isLong = sides[0] >= sides[1]
      best = {
        sidesMm: isLong ? sides : [sides[1], sides[0]],
        longDeg: (sideDeg + (isLong ? 0 : 90) + 360) % 180,
      }
    }
  })
  return best
}

/** Extent along the direction (u, v) and across it. */
function extent(hull: readonly Point[], u: number, v: number): readonly [number, number] {
  const along = hull.map(([x, y]) => x * u + y * v)
  const across = hull.map(([x, y]) => y * u - x * v)
  return [spanOf(along), spanOf(across)]
}

function spanOf(values: readonly number[]): number {
  let low = Infinity
  let high = -Infinity
  for (const value of values) {
    low = Math.min(low, value)
    high = Math.max(high, value)
  }
  return high - low
}

/** Monotone chain (Andrew, Information Processing Letters 9, 1979, 216–219), counter-clockwise. */
function convexHull(points: Float64Array): readonly Point[] {
  const sorted = Array.from({ length: points.length / 2 }, (_, i): Point => [
    points[2 * i] ?? 0,
    points[2 * i + 1] ?? 0,
  ]).toSorted((a, b) => a[0] - b[0] || a[1] - b[1])
  const half = (list: readonly Point[]): Point[] => {
    const chain: Point[] = []
    for (const point of list) {
      while (chain.length > 1 && !turnsLeft(chain.at(-2), chain.at(-1), point)) chain.pop()
      chain.push(point)
    }
    return chain.slice(0, -1)
  }
  return [...half(sorted), ...half(sorted.toReversed())]
}

function turnsLeft(a: Point | undefined, b: Point | undefined, c: Point): boolean {
  if (!a || !b) return true
  return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]) > 0
}
