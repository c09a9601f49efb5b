import type { Vec3 } from '../../model/mesh.ts'

interface Circle {
  readonly x: number
  readonly y: number
  readonly radius: number
}

/**
 * The circle through points, by least squares on x² + y² (I. Kåsa, IEEE Trans. Instrum. Meas. 25,
 * 1976, 8–14), grown to the outermost point; null where some point lies further inside than `slack`
 * × radius or a gap in the round is wider than `mostGap` radians.
 */
export function fitCircle(
  xs: readonly number[],
  ys: readonly number[],
  slack: number,
  mostGap: number,
): Circle | null {
  const n = xs.length
  const meanX = sum(xs) / n
  const meanY = sum(ys) / n
  let [uu, uv, vv, uw, vw] = [0, 0, 0, 0, 0]
  for (let i = 0; i < n; i++) {
    const u = xs[i]! - meanX
    const v = ys[i]! - meanY
    const w = u * u + v * v
    uu += u * u
    uv += u * v
    vv += v * v
    uw += u * w
    vw += v * w
  }
  const determinant = uu * vv - uv * uv
  if (!(determinant > 1e-12 * uu * vv)) return null
  const x = meanX + (uw * vv - vw * uv) / (2 * determinant)
  const y = meanY + (vw * uu - uw * uv) / (2 * determinant)
  let radius = 0
  let least = Infinity
  for (let i = 0; i < n; i++) {
    const distance = Math.hypot(xs[i]! - x, ys[i]! - y)
    if (distance > radius) radius = distance
    if (distance < least) least = distance
  }
  if (least < (1 - slack) * radius) return null
  const angles = xs.map((px, i) => Math.atan2(ys[i]! - y, px - x)).sort((a, b) => a - b)
  let gap = angles[0]! + 2 * Math.PI - angles.at(-1)!
  for (let i = 1; i < n; i++) gap = Math.max(gap, angles[i]! - angles[i - 1]!)
  return gap > 1.02 * mostGap ? null : { x, y, radius }
}

const sum = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0)

/** Two unit axes across a direction; the same two for the same direction. */
export function flatAxes([x, y, z]: Vec3): { readonly right: Vec3; readonly up: Vec3 } {
  const seed: Vec3 = Math.abs(x) < 0.6 ? [1, 0, 0] : [0, 1, 0]
  const along = seed[0] * x + seed[1] * y + seed[2] * z
  const raw: Vec3 = [seed[0] - along * x, seed[1] - along * y, seed[2] - along * z]
  const length = Math.hypot(...raw)
  const right: Vec3 = [raw[0] / length, raw[1] / length, raw[2] / length]
  return {
    right,
    up: [y * right[2] - z * right[1], z * right[0] - x * right[2], x * right[1] - y * right[0]],
  }
}
