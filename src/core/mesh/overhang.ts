import type { Mesh, Vec3 } from '../model/mesh.ts'

/** What of a part's surface hangs over. */
export interface Overhang {
  /** Numbers of the triangles. */
  readonly triangles: readonly number[]
  readonly areaMm2: number
}

/** Less than this hanging over is not worth a word. mm² */
export const LEAST_OVERHANG_MM2 = 1
/** Within this of the bed a facet lies on it. mm */
const ON_BED_MM = 0.05

/**
 * The triangles that face down (`down` is the way to the bed) more than the angle, measured from
 * upright, allows, and do not lie on the bed. Roofs that bridge a gap are among them.
 *
 * @param mesh in mm, faced outwards.
 */
export function findOverhang(
  { positions, indices }: Mesh,
  down: Vec3,
  supportAngleDeg: number,
): Overhang {
  const depth = (corner: number): number =>
    positions[corner]! * down[0] +
    positions[corner + 1]! * down[1] +
    positions[corner + 2]! * down[2]
  let lowest = -Infinity
  for (const index of indices) lowest = Math.max(lowest, depth(3 * index))
  const least = Math.sin((supportAngleDeg * Math.PI) / 180)
  const triangles: number[] = []
  let areaMm2 = 0
  for (let i = 0; i < indices.length; i += 3) {
    const a = 3 * indices[i]!
    const b = 3 * indices[i + 1]!
    const c = 3 * indices[i + 2]!
    const u = [0, 1, 2].map((k) => positions[b + k]! - positions[a + k]!) as [
      number,
      number,
      number,
    ]
    const v = [0, 1, 2].map((k) => positions[c + k]! - positions[a + k]!) as [
      number,
      number,
      number,
    ]
    const n = [
      u[1] * v[2] - u[2] * v[1],
      u[2] * v[0] - u[0] * v[2],
      u[0] * v[1] - u[1] * v[0],
    ] as const
    const twice = Math.hypot(...n)
    const facing = n[0] * down[0] + n[1] * down[1] + n[2] * down[2]
    if (facing <= least * twice) continue
    if (Math.min(depth(a), depth(b), depth(c)) > lowest - ON_BED_MM) continue
    triangles.push(i / 3)
    areaMm2 += twice / 2
  }
  return { triangles, areaMm2 }
}
