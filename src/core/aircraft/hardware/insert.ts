import { INSERTS } from './data.ts'
import { densityWords, discMm2, gramsOf, pitchDiameterMm, requireLength } from './shapes.ts'
import type { HardwareMass, InsertSpec, MetricSize } from './types.ts'

/** What grooves and knurls take off a plain tube (common practice, no source). */
const RELIEF_SHARE = 0.15
const SPREAD_PCT = 20
const MEMORY_SPREAD_PCT = 35

/** Mass of one brass insert, g: a tube of the greatest outside diameter, bored at the pitch diameter. */
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
  /** Least outside diameter of the boss: a wall of 0.25 × the insert's diameter all round (secam-fixing.com gives 0.25–0.9). */
  readonly bossMm: number
  /** Least depth of a blind hole: 1 mm below the insert (secam-fixing.com). */
  readonly depthMm: number
}

export function insertSeat(size: MetricSize, lengthMm: number): InsertSeat {
  const { outerMm, holeMm } = INSERTS[size]
  return { holeMm, bossMm: outerMm * (1 + 2 * 0.25), depthMm: lengthMm + 1 }
}
