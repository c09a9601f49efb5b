import type { Pattern } from '../model/settings.ts'
import { moveTime } from './kinematics.ts'
import type { Motion } from './motion.ts'
import { cornerSpeedMmS } from './motion.ts'

/** σ = sin(half the turn) where a honeycomb path bends from one cell side to the next, by 60°. */
const SIGMA_HONEYCOMB = 0.5

/**
 * Mean speed along the paths of a pattern whose neighbours lie `spacingMm` apart, mm/s: that of
 * the motion where they are straight, less where they wind.
 */
export function paceOf(pattern: Pattern, spacingMm: number, motion: Motion): number {
  if (pattern === 'gyroid') return wavePace(2 * spacingMm, motion)
  if (pattern !== 'honeycomb') return motion.speedMmS
  // Two paths share a row of cells √3·side wide, so a side is 2/√3 of the distance between paths.
  const sideMm = (2 / Math.sqrt(3)) * spacingMm
  const corner = cornerSpeedMmS(SIGMA_HONEYCOMB, motion)
  return sideMm / moveTime(sideMm, motion.speedMmS, motion.accelMmS2, corner)
}

/** One wave of a period of 1 as facets, each with the corner that leads to it. */
interface Wave {
  readonly length: Float64Array
  /** sin(half the turn). */
  readonly sigma: Float64Array
  /** Radius of the curve that the facets stand for. */
  readonly radius: Float64Array
}

/**
 * Facets of a wave. With v²/r held, waves of 24 to 256 facets take the same time within 4 %; by
 * the corner rule alone fewer take longer and many take none.
 */
const FACETS = 24
/** Heights in a quarter of a cell, which stands for all of it; 4 and 64 differ by 0.4 %. */
const HEIGHTS = 4

/**
 * The cut of sin x cos y + sin y cos z + sin z cos x = 0 at height z, solved for x: a wave along
 * y from 45° to 135°, and by symmetry along x at other heights.
 */
function waveAt(z: number): Wave {
  const at = (i: number): readonly [number, number] => {
    const y = (2 * Math.PI * i) / FACETS
    const reach = Math.hypot(Math.cos(y), Math.sin(z))
    const x = Math.asin((-Math.sin(y) * Math.cos(z)) / reach)
    return [(x - Math.atan2(Math.sin(z), Math.cos(y))) / (2 * Math.PI), i / FACETS]
  }
  const facets = Array.from({ length: FACETS }, (_, i) => {
    const [from, to] = [at(i), at(i + 1)]
    const [u, v] = [to[0] - from[0], to[1] - from[1]]
    return { length: Math.hypot(u, v), angle: Math.atan2(v, u) }
  })
  const before = (i: number) => facets.at(i - 1) ?? { length: 0, angle: 0 }
  const turns = facets.map(({ angle }, i) => Math.abs(angle - before(i).angle))
  return {
    length: Float64Array.from(facets, ({ length }) => length),
    sigma: Float64Array.from(turns, (turn) => Math.sin(turn / 2)),
    radius: Float64Array.from(
      facets,
      ({ length }, i) => (length + before(i).length) / 2 / Math.max(turns[i] ?? 0, 1e-9),
    ),
  }
}

const WAVES: readonly Wave[] = Array.from({ length: HEIGHTS }, (_, k) =>
  waveAt((Math.PI / 4) * (1 + (k + 0.5) / HEIGHTS)),
)

/**
 * Mean speed along waves of `periodMm`, driven as a machine does: corners of the facets by the
 * corner rule, never more sideways than it accelerates (v²/r ≤ a), no ramp steeper either way.
 */
function wavePace(periodMm: number, motion: Motion): number {
  let pathMm = 0
  let timeS = 0
  for (const wave of WAVES) {
    const limits = limitsOf(wave, periodMm, motion)
    for (let i = 0; i < FACETS; i++) {
      const lengthMm = periodMm * (wave.length[i] ?? 0)
      const entry = limits[i] ?? 0
      const exit = limits[(i + 1) % FACETS] ?? 0
      pathMm += lengthMm
      timeS += moveTime(lengthMm, motion.speedMmS, motion.accelMmS2, entry, exit)
    }
  }
  return timeS > 0 ? pathMm / timeS : motion.speedMmS
}

/** Speed at the start of every facet, waves following on each other without an end. mm/s */
function limitsOf({ length, sigma, radius }: Wave, periodMm: number, motion: Motion): Float64Array {
  const { accelMmS2 } = motion
  const limits = Float64Array.from(sigma, (value, i) =>
    Math.min(
      cornerSpeedMmS(value, motion),
      Math.sqrt(accelMmS2 * periodMm * (radius[i] ?? Infinity)),
    ),
  )
  const ramp = (from: number, to: number, lengthMm: number): void => {
    const reach = Math.sqrt((limits[from] ?? 0) ** 2 + 2 * accelMmS2 * lengthMm)
    limits[to] = Math.min(limits[to] ?? 0, reach)
  }
  const next = (i: number): number => (i + 1) % FACETS
  for (let k = 0; k < 2 * FACETS; k++) {
    const i = k % FACETS
    ramp(i, next(i), periodMm * (length[i] ?? 0))
  }
  for (let k = 2 * FACETS - 1; k >= 0; k--) {
    const i = k % FACETS
    ramp(next(i), i, periodMm * (length[i] ?? 0))
  }
  return limits
}
