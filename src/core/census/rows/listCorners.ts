/**
 * Fills `corners` with a contour, points that coincide once: u, v and the unit normal of the edge
 * that begins there, stride 4. There must be room for all its points.
 *
 * @param along the coordinate, 0 for x or 1 for y, that is u.
 * @returns how many corners there are.
 */
export function listCorners(
  points: Float64Array,
  begin: number,
  end: number,
  along: 0 | 1,
  corners: Float64Array,
): number {
  let count = 0
  for (let i = begin; i < end; i++) {
    const next = i + 1 < end ? i + 1 : begin
    const u = points[2 * i + along]!
    const v = points[2 * i + 1 - along]!
    const du = points[2 * next + along]! - u
    const dv = points[2 * next + 1 - along]! - v
    const size = Math.sqrt(du * du + dv * dv)
    if (size === 0) continue
    corners[4 * count] = u
    corners[4 * count + 1] = v
    corners[4 * count + 2] = -dv / size
    corners[4 * count + 3] = du / size
    count++
  }
  return count
}
