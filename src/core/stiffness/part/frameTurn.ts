import type { Mesh } from '../../model/mesh.ts'

/** Walls of one direction that make up less of all upright ones than this give no frame. */
const LEAST_SHARE = 0.15
const STEPS = 360

/**
 * How far a placed part's long straight walls are turned against the bed's x and y, in degrees from
 * −45 to 45; 0 where it has none. A grid turned with them has walls along its cells, not across.
 */
export function frameTurnDeg({ positions, indices }: Mesh): number {
  const bins = new Float64Array(STEPS)
  const turns = new Float64Array(STEPS)
  let all = 0
  for (let i = 0; i < indices.length; i += 3) {
    const [a, b, c] = [3 * indices[i]!, 3 * indices[i + 1]!, 3 * indices[i + 2]!]
    const u = [0, 1, 2].map((k) => positions[b + k]! - positions[a + k]!)
    const v = [0, 1, 2].map((k) => positions[c + k]! - positions[a + k]!)
    const x = u[1]! * v[2]! - u[2]! * v[1]!
    const y = u[2]! * v[0]! - u[0]! * v[2]!
    const z = u[0]! * v[1]! - u[1]! * v[0]!
    const size = Math.hypot(x, y)
    if (!(size > 0) || Math.abs(z) > 0.05 * size) continue
    const turn = ((((Math.atan2(y, x) * 180) / Math.PI) % 90) + 90) % 90
    const bin = Math.round((turn / 90) * STEPS) % STEPS
    bins[bin]! += size
    turns[bin]! += size * (turn > 89.5 ? turn - 90 : turn)
    all += size
  }
  let best = 0
  for (let bin = 1; bin < STEPS; bin++) if (bins[bin]! > bins[best]!) best = bin
  if (!(bins[best]! > LEAST_SHARE * all)) return 0
  const turn = turns[best]! / bins[best]!
  return turn > 45 ? turn - 90 : turn
}
