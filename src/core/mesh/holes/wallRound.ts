import type { Mesh, Vec3 } from '../../model/mesh.ts'
import { cross, dot, minus, plus, times } from '../../model/vectors.ts'
import { flatAxes } from './fitCircle.ts'
import type { WholeHole } from './wholeHoles.ts'

/**
 * Where down the narrowest part the wall is looked at; its ends may be rounded, or lie in a slope.
 */
const LEVELS = [0.35, 0.5, 0.65]
/** A hexagon's corners reach further than its flats by 2 ÷ √3. */
const CORNERS = { round: 1.03, slot: 1.03, hexagon: 1.17 } as const
/** Rounding of a mesh in single precision. mm */
const SLACK_MM = 0.02
/**
 * A level counts where so much of the hole's own round is cut: a hole in a tube ends in a saddle.
 */
const WHOLE = 0.9

type Flat = readonly [x: number, y: number]

/**
 * How much of the part stands round a hole: from its own wall to the nearest other surface, the
 * least of three levels. mm; Infinity where there is none.
 *
 * @param mesh the one the hole was found on, in mm.
 */
export function wallRound(mesh: Mesh, hole: WholeHole): number {
  const { axis, centreMm, depthMm, diameterMm, clearMm, stretchMm, along, shape } = hole
  const { positions, indices } = mesh
  const right = stretchMm > 0 ? along : flatAxes(axis).right
  const up = cross(axis, right)
  const half = stretchMm / 2
  const own = (CORNERS[shape] * diameterMm) / 2 + SLACK_MM
  const fromCentre = (vertex: number): Vec3 =>
    minus(
      [positions[3 * vertex]!, positions[3 * vertex + 1]!, positions[3 * vertex + 2]!],
      centreMm,
    )
  const heights = new Float64Array(positions.length / 3)
  for (let v = 0; v < heights.length; v++) {
    heights[v] =
      (positions[3 * v]! - centreMm[0]) * axis[0] +
      (positions[3 * v + 1]! - centreMm[1]) * axis[1] +
      (positions[3 * v + 2]! - centreMm[2]) * axis[2]
  }
  const round = Math.PI * clearMm + 2 * stretchMm
  let least = Infinity
  for (const level of LEVELS) {
    const z = (level - 0.5) * depthMm
    let near = Infinity
    let ownRound = 0
    for (let i = 0; i < indices.length; i += 3) {
      const a = heights[indices[i]!]! >= z
      const b = heights[indices[i + 1]!]! >= z
      const c = heights[indices[i + 2]!]! >= z
      if (a === b && b === c) continue
      // The corner on its own side of the cut.
      const lone = b === c ? 0 : a === c ? 1 : 2
      const tip = indices[i + lone]!
      const [from, to] = [1, 2].map((k): Flat => {
        const other = indices[i + ((lone + k) % 3)]!
        const share = (z - heights[tip]!) / (heights[other]! - heights[tip]!)
        const start = fromCentre(tip)
        const at = plus(start, times(minus(fromCentre(other), start), share))
        return [dot(at, right), dot(at, up)]
      }) as [Flat, Flat]
      if (reach(from, half) <= own && reach(to, half) <= own) {
        ownRound += Math.hypot(to[0] - from[0], to[1] - from[1])
      } else near = Math.min(near, nearest(from, to, half))
    }
    if (ownRound > WHOLE * round) least = Math.min(least, near)
  }
  return Math.max(0, least - diameterMm / 2)
}

/** From the middle, or from the nearer end's middle of a slot. */
function reach([x, y]: Flat, half: number): number {
  return Math.hypot(Math.max(0, Math.abs(x) - half), y)
}

/** Nearest that a straight piece comes: at one of its ends, or beside one of the slot's. */
function nearest(from: Flat, to: Flat, half: number): number {
  return half === 0
    ? awayFrom(0, from, to)
    : Math.min(
        reach(from, half),
        reach(to, half),
        awayFrom(half, from, to),
        awayFrom(-half, from, to),
      )
}

/** How far a straight piece stays from (x, 0). */
function awayFrom(x: number, from: Flat, to: Flat): number {
  const dx = to[0] - from[0]
  const dy = to[1] - from[1]
  const squared = dx * dx + dy * dy
  const share = squared > 0 ? ((x - from[0]) * dx - from[1] * dy) / squared : 0
  const at = Math.min(1, Math.max(0, share))
  return Math.hypot(from[0] + at * dx - x, from[1] + at * dy)
}
