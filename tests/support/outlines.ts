import fc from 'fast-check'
import type { Outline } from '../../src/core/census/cut/simplify.ts'
import type { BorrowedRows } from '../../src/core/census/rows/rowSet.ts'

/** A star-shaped polygon, corners and hollows of any sharpness, counterclockwise. */
export const star = fc
  .array(
    fc.tuple(
      fc.double({ min: 2, max: 9, noNaN: true }),
      fc.double({ min: 0.2, max: 1, noNaN: true }),
    ),
    {
      minLength: 4,
      maxLength: 24,
    },
  )
  .map((rays): Outline => {
    const whole = rays.reduce((sum, [, share]) => sum + share, 0)
    let angle = 0
    const points = rays.flatMap(([radius, share]) => {
      angle += (share / whole) * 2 * Math.PI
      return [radius * Math.cos(angle), radius * Math.sin(angle)]
    })
    return { points: Float64Array.from(points), start: Int32Array.of(0, rays.length) }
  })

/** A round outline about 0, 0, counterclockwise. */
export const round = (sides: number, radius: number): Outline => ({
  points: Float64Array.from({ length: 2 * sides }, (_, i) => {
    const angle = (2 * Math.PI * (i >> 1)) / sides
    return radius * (i % 2 === 0 ? Math.cos(angle) : Math.sin(angle))
  }),
  start: Int32Array.of(0, sides),
})

/** The slow obvious way: the least of the distances to all edges. */
export function distanceMm({ points, start }: Outline, u: number, v: number): number {
  let least2 = Infinity
  let contour = 0
  for (let i = 0; i < points.length / 2; i++) {
    if (i === start[contour + 1]) contour++
    const j = i + 1 < start[contour + 1]! ? i + 1 : start[contour]!
    const du = points[2 * j]! - points[2 * i]!
    const dv = points[2 * j + 1]! - points[2 * i + 1]!
    const pu = u - points[2 * i]!
    const pv = v - points[2 * i + 1]!
    const length2 = du * du + dv * dv
    const t = length2 > 0 ? Math.min(1, Math.max(0, (pu * du + pv * dv) / length2)) : 0
    least2 = Math.min(least2, (pu - t * du) ** 2 + (pv - t * dv) ** 2)
  }
  return Math.sqrt(least2)
}

/** Whether a row of a region holds a place. */
export function holds({ start, spans }: BorrowedRows, row: number, at: number): boolean {
  for (let i = start[row]!; i < start[row + 1]!; i++) {
    if (spans[2 * i]! <= at && at <= spans[2 * i + 1]!) return true
  }
  return false
}
