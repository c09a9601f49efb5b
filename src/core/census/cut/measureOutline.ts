import type { Outline } from './simplify.ts'

/**
 * Half the turn of the sharpest corner that is taken as one; a sharper one is a wall that runs out.
 */
const SHARPEST = 1.2

/**
 * Length of all contours, and how much shorter each mm of inset makes them: 2·tan(half the turn),
 * or the arc at inner corners.
 */
export function measureOutline({ points, start }: Outline): {
  readonly lengthMm: number
  readonly corners: number
  /** Rows along u (0) or along v (1): the ones that more of the outline runs across. */
  readonly crossed: 0 | 1
} {
  let lengthMm = 0
  let corners = 0
  let alongU = 0
  let alongV = 0
  for (let c = 0; c + 1 < start.length; c++) {
    const begin = start[c]!
    const end = start[c + 1]!
    let beforeU = points[2 * begin]! - points[2 * end - 2]!
    let beforeV = points[2 * begin + 1]! - points[2 * end - 1]!
    for (let i = begin; i < end; i++) {
      const next = i + 1 < end ? i + 1 : begin
      const u = points[2 * next]! - points[2 * i]!
      const v = points[2 * next + 1]! - points[2 * i + 1]!
      const turn = Math.atan2(beforeU * v - beforeV * u, beforeU * u + beforeV * v)
      lengthMm += Math.sqrt(u * u + v * v)
      alongU += Math.abs(u)
      alongV += Math.abs(v)
      corners += turn > 0 ? (turn / 2 < SHARPEST ? 2 * Math.tan(turn / 2) : 0) : turn
      beforeU = u
      beforeV = v
    }
  }
  return { lengthMm, corners, crossed: alongV >= alongU ? 0 : 1 }
}
