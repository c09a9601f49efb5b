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
 * Speed a corner is taken at: the velocity may jump by so much and no more, whatever the angle. The
 * jump at speed v and σ = sin(half the turn) is 2vσ, so v = v₉₀·σ₉₀/σ. Never above the line's own
 * speed.
 */
export function cornerSpeedMmS(sigma: number, motion: Motion): number {
  if (sigma >= STANDSTILL) return 0
  return Math.min(motion.speedMmS, (motion.cornerMmS * SIGMA_RIGHT_ANGLE) / sigma)
}

/**
 * Seconds for all runs around the contours, lengths times `scale`. Of the tables, the one whose
 * limit is the largest at which a corner still does not slow the head: there every entry is one
 * ramp up, one cruise, one ramp down.
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

/** Parallel lines driven one by one. Divided by the distance between them, what they come to. */
export interface LineSums {
  /** Their number × that distance. mm */
  readonly acrossMm: number
  /** Their length. mm² */
  readonly laidMm2: number
  /** Their time, without the steps from one to the next. mm·s */
  readonly movesMmS: number
  /** Speeds at the two corners of a step. mm/s */
  readonly gentle: number
  readonly sharp: number
}

/**
 * Drives lines whose paths are `times` as long as they are straight, at `paceMmS`, their mean
 * speed, where they wind. Where the edge lies askew to the lines, every second corner is gentler
 * than a right angle and every other one sharper. A line ends half its width short of the region's
 * edge at both ends; what is shorter than it is wide is laid in passing.
 */
export function driveLines(
  lines: LineTable,
  lineMm: number,
  motion: Motion,
  times = 1,
  paceMmS = motion.speedMmS,
): LineSums {
  const askew = Math.acos(Math.min(1, 1 / lines.slant))
  const gentle = cornerSpeedMmS(Math.sin(Math.PI / 4 - askew / 2), motion)
  const sharp = cornerSpeedMmS(Math.sin(Math.PI / 4 + askew / 2), motion)
  let acrossMm = 0
  let laidMm2 = 0
  let movesMmS = 0
  for (let i = 0; i < lines.acrossMm.length; i++) {
    const lengthMm = times * lines.lengthMm[i]! - lineMm
    if (lengthMm <= 0) continue
    const some = lines.acrossMm[i]!
    acrossMm += some
    laidMm2 += some * lengthMm
    movesMmS += some * moveTime(lengthMm, paceMmS, motion.accelMmS2, gentle, sharp)
  }
  return { acrossMm, laidMm2, movesMmS, gentle, sharp }
}

/**
 * Seconds for lines laid `spacingMm` apart, back and forth in so many zigzags, with a step of
 * `stepMm` from each to the next. Every zigzag starts and ends at a standstill.
 */
export function zigzagTime(
  { acrossMm, laidMm2, movesMmS, gentle, sharp }: LineSums,
  zigzags: number,
  spacingMm: number,
  stepMm: number,
  { speedMmS, accelMmS2, cornerMmS }: Motion,
): LaidSeconds {
  const count = acrossMm / spacingMm
  const starts = Math.min(zigzags, count)
  const steps = count - starts
  const stepsS = steps * moveTime(stepMm, speedMmS, accelMmS2, gentle, sharp)
  // From rest instead of from corner speed: v/a for the ramp, less what the same way takes at
  // cruising speed.
  const corner = Math.min(cornerMmS, speedMmS)
  const fromRest = (corner / accelMmS2) * (1 - corner / (2 * speedMmS))
  const cruiseS = (laidMm2 / spacingMm + steps * stepMm) / speedMmS
  return { cruiseS, turnS: movesMmS / spacingMm + stepsS + 2 * starts * fromRest - cruiseS }
}

/** How far lines reach across, those shorter than they are wide left out. mm */
export function acrossOf({ acrossMm, lengthMm }: LineTable, lineMm: number): number {
  let sum = 0
  for (let i = 0; i < acrossMm.length; i++) if (lengthMm[i]! > lineMm) sum += acrossMm[i]!
  return sum
}

/** How many moves. */
export function hopCount({ count }: TravelTable): number {
  let hops = 0
  for (let i = 0; i < count.length; i++) hops += count[i]!
  return hops
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
