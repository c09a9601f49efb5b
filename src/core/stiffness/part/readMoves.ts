import type { Vec3 } from '../../model/mesh.ts'
import type { Level } from '../solid/types.ts'

/**
 * A point of the middle line: how far on from what is held, and how far it moves along the load. mm
 */
export interface LinePoint {
  readonly atMm: number
  readonly moveMm: number
}

/** Points of the middle line that are told. */
const POINTS = 24
/** Nodes this near to the first that is pushed tell the slope there. mm */
const SLOPE_REACH_MM = 3

/** Plastic that each node stands for: an eighth of its cells'. mm³ */
export function nodeWeights({ linesMm, nodes, runs, rowOf }: Level, plasticShare: Float64Array) {
  const [xs, ys, zs] = linesMm
  const weights = new Float64Array(nodes)
  let cell = 0
  for (let run = 0; run < runs.length; run += 8) {
    const [x, y, z] = [runs[run]!, runs[run + 1]!, runs[run + 2]!]
    const face = (ys[y + 1]! - ys[y]!) * (zs[z + 1]! - zs[z]!)
    for (let i = 0; i < runs[run + 3]!; i++) {
      const volume = face * (xs[x + i + 1]! - xs[x + i]!) * plasticShare[rowOf[cell++]!]!
      for (let edge = 4; edge < 8; edge++) {
        weights[runs[run + edge]! + i]! += volume / 8
        weights[runs[run + edge]! + i + 1]! += volume / 8
      }
    }
  }
  return weights
}

const placeOf = ({ linesMm, lineOf }: Level, node: number): Vec3 => [
  linesMm[0][lineOf[3 * node]!]!,
  linesMm[1][lineOf[3 * node + 1]!]!,
  linesMm[2][lineOf[3 * node + 2]!]!,
]

function middleOf(level: Level, nodes: readonly number[]): Vec3 {
  const sum = [0, 0, 0]
  for (const node of nodes) placeOf(level, node).forEach((at, k) => (sum[k]! += at))
  return [sum[0]! / nodes.length, sum[1]! / nodes.length, sum[2]! / nodes.length]
}

/** The way from what is held to what is pushed, as far as it lies across the load; unit length. */
function leverOf(
  level: Level,
  hold: readonly number[],
  push: readonly number[],
  load: Vec3 | null,
) {
  const from = middleOf(level, hold)
  const to = middleOf(level, push)
  const way = from.map((at, k) => to[k]! - at)
  const along = load === null ? 0 : way.reduce((sum, part, k) => sum + part * load[k]!, 0)
  const across = way.map((part, k) => part - along * (load?.[k] ?? 0))
  const length = Math.hypot(...across)
  const unit = length > 1e-6 ? across.map((part) => part / length) : [0, 0, 0]
  const on = (node: number): number =>
    placeOf(level, node).reduce((sum, at, k) => sum + (at - from[k]!) * unit[k]!, 0)
  return { length, on }
}

/**
 * How far the part turns where it is pushed: the slope of the moves along the lever (least
 * squares). Degrees
 */
export function slopeAtPush(
  level: Level,
  hold: readonly number[],
  push: readonly number[],
  load: Vec3,
  along: (node: number) => number,
): number {
  const { length, on } = leverOf(level, hold, push, load)
  if (!(length > 1e-6)) return 0
  const from = push.reduce((least, node) => Math.min(least, on(node)), Infinity) - SLOPE_REACH_MM
  const to = push.reduce((most, node) => Math.max(most, on(node)), -Infinity)
  let [count, s, w, ss, sw] = [0, 0, 0, 0, 0]
  for (let node = 0; node < level.nodes; node++) {
    const at = on(node)
    if (at < from || at > to) continue
    const move = along(node)
    count++
    s += at
    w += move
    ss += at * at
    sw += at * move
  }
  const spread = count * ss - s * s
  return spread > 0 ? (Math.atan((count * sw - s * w) / spread) * 180) / Math.PI : 0
}

/** The middle line in slices across the way from what is held to what is pushed. */
export function lineOfMoves(
  level: Level,
  hold: readonly number[],
  push: readonly number[],
  weights: Float64Array,
  along: (node: number) => number,
): readonly LinePoint[] {
  const { length, on } = leverOf(level, hold, push, null)
  if (!(length > 1e-6)) return []
  let [low, high] = [Infinity, -Infinity]
  for (let node = 0; node < level.nodes; node++) {
    const at = on(node)
    if (at < low) low = at
    if (at > high) high = at
  }
  const sums = new Float64Array(POINTS)
  const shares = new Float64Array(POINTS)
  for (let node = 0; node < level.nodes; node++) {
    const slice = Math.min(POINTS - 1, Math.floor(((on(node) - low) / (high - low)) * POINTS))
    sums[slice]! += weights[node]! * along(node)
    shares[slice]! += weights[node]!
  }
  return Array.from({ length: POINTS }, (_, slice) => ({
    atMm: low + ((slice + 0.5) * (high - low)) / POINTS,
    moveMm: shares[slice]! > 0 ? sums[slice]! / shares[slice]! : Number.NaN,
  })).filter(({ moveMm }) => Number.isFinite(moveMm))
}
