import { INSERTS } from './data.ts'
import { densityWords, discMm2, gramsOf, pitchDiameterMm, requireLength } from './shapes.ts'
import type { HardwareMass, InsertSpec, MetricSize } from './types.ts'

/** What grooves and knurls take off a plain tube (common practice, no source). */
const RELIEF_SHARE = 0.15
const SPREAD_PCT = 20
const MEMORY_SPREAD_PCT = 35

/**
 * Mass of one brass insert, g: a tube of the greatest outside diameter, bored at the pitch
 * diameter.
 */
export function insertMass(spec: InsertSpec): HardwareMass {
  const { size, lengthMm } = spec
  requireLength(lengthMm, 0, `Insert ${size}`)
  const { outerMm, mark } = INSERTS[size]
  const tubeMm3 = (discMm2(outerMm) - discMm2(pitchDiameterMm(size))) * lengthMm
  const recalled = mark === 'memory'
  return {
    massG: gramsOf(tubeMm3 * (1 - RELIEF_SHARE), 'brass'),
    basis: recalled ? 'memory' : 'computed',
    spreadPct: recalled ? MEMORY_SPREAD_PCT : SPREAD_PCT,
    source: recalled
      ? 'computed from an outside diameter from memory, not read'
      : `computed from shape: outside diameter of the Accu hole chart, 15 % knurl relief; ${densityWords('brass')}`,
  }
}

/** Where an insert sits. */
export interface InsertSeat {
  readonly holeMm: number
  /** Least outside diameter of the boss for full pull-out. */
  readonly bossMm: number
  /**
   * Below this even setting it splits or bulges the boss: 0.25 × the insert's diameter all round
   * (secam-fixing.com).
   */
  readonly leastBossMm: number
  /** Least depth of a blind hole: 1 mm below the insert (secam-fixing.com). */
  readonly depthMm: number
}

/**
 * Plastic round the insert, and how full it has to be there, for full pull-out: more than 2.4 mm
 * gains nothing (TU Dresden, J. Manuf. Mater. Process. 2023, 7(1), 42, doi 10.3390/jmmp7010042).
 */
export const INSERT_WALL_MM = 2.4
export const INSERT_INFILL_PCT = 70
const LEAST_WALL_SHARE = 0.25

/**
 * The shortest that is made for a thread, mm: it is what goes into a hole too shallow for the usual
 * one.
 */
export function shortestInsertMm(size: MetricSize): number {
  const { lengthMm, shorterMm } = INSERTS[size]
  return shorterMm ?? lengthMm
}

export function insertSeat(size: MetricSize, lengthMm: number): InsertSeat {
  const { outerMm, holeMm } = INSERTS[size]
  return {
    holeMm,
    bossMm: outerMm + 2 * INSERT_WALL_MM,
    leastBossMm: outerMm * (1 + 2 * LEAST_WALL_SHARE),
    depthMm: lengthMm + 1,
  }
}
