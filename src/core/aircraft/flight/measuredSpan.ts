import { HOVER_ROWS } from '../../data/hoverRows.ts'

/** ln of the diameter in mm, ln of the thrust of one propeller in g. */
type Point = readonly [diameter: number, thrust: number]

/**
 * How far a craft lies outside what was measured: its distance, in powers of e of diameter and of
 * thrust of one propeller, from the convex hull of the measured rows. 0 inside.
 */
export function beyondMeasured(propDiameterMm: number, thrustG: number): number {
  const point: Point = [Math.log(propDiameterMm), Math.log(thrustG)]
  let inside = true
  let nearest = Infinity
  HULL.forEach((from, i) => {
    const to = HULL[(i + 1) % HULL.length] ?? from
    if (turn(from, to, point) < -1e-12) inside = false
    nearest = Math.min(nearest, distanceTo(from, to, point))
  })
  return inside ? 0 : nearest
}

const HULL = hullOf(
  HOVER_ROWS.map(({ propDiameterMm, thrustG }) => [Math.log(propDiameterMm), Math.log(thrustG)]),
)

/** Counter-clockwise, by walking from each corner to the point that has all others on its left. */
function hullOf(points: readonly Point[]): readonly Point[] {
  const start = points.toSorted((a, b) => a[0] - b[0] || a[1] - b[1])[0]
  const hull: Point[] = []
  for (let at = start; at !== undefined && hull.length <= points.length;) {
    hull.push(at)
    const from = at
    const next = points
      .filter((point) => point !== from)
      .reduce((best, point) => (turn(from, best, point) < 0 ? point : best))
    at = next === start ? undefined : next
  }
  return hull
}

/** Above zero where `c` lies left of the way from `a` to `b`. */
function turn(a: Point, b: Point, c: Point): number {
  return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])
}

function distanceTo(a: Point, b: Point, point: Point): number {
  const [u, v] = [b[0] - a[0], b[1] - a[1]]
  const along = ((point[0] - a[0]) * u + (point[1] - a[1]) * v) / (u * u + v * v)
  const at = Math.min(1, Math.max(0, along))
  return Math.hypot(point[0] - a[0] - at * u, point[1] - a[1] - at * v)
}
