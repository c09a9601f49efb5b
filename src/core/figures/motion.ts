import type { LineTable, RunTable, TravelTable } from '../model/moves.ts'
import { CORNER_LIMITS, RETRACT_BEYOND_MM, STANDSTILL } from '../model/moves.ts'
import { moveTime } from './kinematics.ts'

/** How the head moves along one kind of line. */
export interface Motion {
  readonly speedMmS: number
  readonly accelMmS2: number
  /** Speed a right angle is taken at. */
  readonly cornerMmS: number
}

/** Seconds at speed all along, and what ramps, turns and waves add. */
export interface LaidSeconds {
  readonly cruiseS: number
  readonly turnS: number
}

const SIGMA_RIGHT_ANGLE = Math.SQRT1_2

/**
 * Speed a corner is taken at: the velocity may jump by so much and no more, whatever the angle. The jump at speed v and
 * σ = sin(half the turn) is 2vσ, so v = v₉₀·σ₉₀/σ. Never above the line's own speed.
 */
export function cornerSpeedMmS(sigma: number, motion: Motion): number {
  if (sigma >= STANDSTILL) return 0
  return Math.min(motion.speedMmS, (motion.cornerMmS * SIGMA_RIGHT_ANGLE) / sigma)
}

/**
 * Seconds for all runs around the contours, lengths times `scale`. Of the tables, the one whose limit is the
 * largest at which a corner still does not slow the head: there every entry is one ramp up, one cruise, one ramp down.
 */
export function lapTime(tables: readonly RunTable[], scale: number, motion: Motion): LaidSeconds {
  const harmless = (motion.cornerMmS * SIGMA_RIGHT_ANGLE) / motion.speedMmS
  let limit = 0
  while (limit + 1 < CORNER_LIMITS.length && CORNER_LIMITS[limit + 1]! <= harmless) limit++
  const table = tables[limit]
  if (!table) return { cruiseS: 0, turnS: 0 }
  let timeS = 0
  let laidMm = 0
  for (let i = 0; i < table.count.length; i++) {
    const entry = cornerSpeedMmS(table.gentle[i]!, motion)
    const exit = cornerSpeedMmS(table.sharp[i]!, motion)
    const lengthMm = table.lengthMm[i]! * scale
    const some = table.count[i]!
    laidMm += some * lengthMm
    timeS += some * moveTime(lengthMm, motion.speedMmS, motion.accelMmS2, entry, exit)
  }
  const cruiseS = laidMm / motion.speedMmS
  return { cruiseS, turnS: timeS - cruiseS }
}

/**
 * Seconds for lines laid `spacingMm` apart, back and forth in so many zigzags, with a step of
 * `stepMm` from each to the next. Where the edge lies askew to the lines, every second corner is
 * gentler than a right angle and every other one sharper. A line ends half its width short of the
 * region's edge at both ends; what is shorter than it is wide is laid in passing. Every zigzag
 * starts and ends at a standstill. Lines that wind are driven at `paceMmS`, their mean speed, in
 * place of their own.
 */
export function zigzagTime(
  lines: LineTable,
  zigzags: number,
  spacingMm: number,
  stepMm: number,
  lineMm: number,
  motion: Motion,
  paceMmS: number = motion.speedMmS,
): LaidSeconds {
  const askew = Math.acos(Math.min(1, 1 / lines.slant))
  const gentle = cornerSpeedMmS(Math.sin(Math.PI / 4 - askew / 2), motion)
  const sharp = cornerSpeedMmS(Math.sin(Math.PI / 4 + askew / 2), motion)
  const { speedMmS, accelMmS2 } = motion
  const step = moveTime(stepMm, speedMmS, accelMmS2, gentle, sharp)
  let timeS = 0
  let laidMm = 0
  let count = 0
  for (let i = 0; i < lines.acrossMm.length; i++) {
    const lengthMm = lines.lengthMm[i]! - lineMm
    if (lengthMm <= 0) continue
    const some = lines.acrossMm[i]! / spacingMm
    count += some
    laidMm += some * lengthMm
    timeS += some * moveTime(lengthMm, paceMmS, accelMmS2, gentle, sharp)
  }
  const starts = Math.min(zigzags, count)
  // From rest instead of from corner speed: v/a for the ramp, less what the same way takes at cruising speed.
  const corner = Math.min(motion.cornerMmS, speedMmS)
  const fromRest = (corner / accelMmS2) * (1 - corner / (2 * speedMmS))
  const cruiseS = laidMm / speedMmS + ((count - starts) * stepMm) / speedMmS
  return { cruiseS, turnS: timeS + (count - starts) * step + 2 * starts * fromRest - cruiseS }
}

/** Lines laid `spacingMm` apart, without those shorter than they are wide. */
export function lineCount(lines: LineTable, spacingMm: number, lineMm: number): number {
  let acrossMm = 0
  for (let i = 0; i < lines.acrossMm.length; i++) {
    if (lines.lengthMm[i]! > lineMm) acrossMm += lines.acrossMm[i]!
  }
  return acrossMm / spacingMm
}

/** How many moves. */
export function hopCount({ count }: TravelTable): number {
  let hops = 0
  for (let i = 0; i < count.length; i++) hops += count[i]!
  return hops
}

/** A measure of something known at several spacings; between them in even ratios. */
export function atSpacing<T extends { readonly spacingMm: number }>(
  steps: readonly T[],
  spacingMm: number,
  measure: (step: T) => number,
): number {
  const wider = steps.findIndex((step) => step.spacingMm >= spacingMm)
  const to = steps[wider < 0 ? steps.length - 1 : wider]
  if (!to) return 0
  const from = steps[wider - 1]
  if (!from) return measure(to)
  const share = Math.log(spacingMm / from.spacingMm) / Math.log(to.spacingMm / from.spacingMm)
  return measure(from) * (1 - share) + measure(to) * share
}

/** How the head moves without laying plastic. */
export interface TravelMotion extends Pick<Motion, 'speedMmS' | 'accelMmS2'> {
  readonly retractS: number
}

const isFar = (lengthMm: number): boolean => lengthMm > RETRACT_BEYOND_MM

/**
 * Seconds for the moves without plastic, from rest to rest: those that leave the filament where it
 * is, or the `far` ones, which draw it back and push it forward.
 */
export function travelTime(travel: TravelTable, far: boolean, motion: TravelMotion): number {
  let timeS = 0
  for (let i = 0; i < travel.count.length; i++) {
    const lengthMm = travel.lengthMm[i]!
    if (isFar(lengthMm) !== far) continue
    const pause = far ? motion.retractS : 0
    timeS += travel.count[i]! * (moveTime(lengthMm, motion.speedMmS, motion.accelMmS2) + pause)
  }
  return timeS
}
