import type { MassBasis } from '../../model/aircraft.ts'
import type { JointThread } from '../../model/joints.ts'

/** Coarse metric threads by ISO 261 name. */
export type MetricSize = JointThread

export type ScrewStandard = 'ISO 4762' | 'ISO 7380-1' | 'ISO 10642'
export type NutStandard = 'ISO 4032' | 'DIN 934' | 'ISO 7040'

/**
 * `aluminium` is the common bar and rod alloy, `aluminium-7075` the strong one screws are turned
 * from.
 */
export type HardwareMaterial =
  'steel' | 'stainless' | 'titanium' | 'aluminium' | 'aluminium-7075' | 'brass' | 'nylon'

export type StandoffShape = 'hex' | 'round'

/** The mass of one piece and how it is known. */
export interface HardwareMass {
  readonly massG: number
  /**
   * `published`: a row of a table that was read. `computed`: from dimensions that were read.
   * `memory`: from dimensions that were not.
   */
  readonly basis: Exclude<MassBasis, 'typed'>
  /** The true mass lies within ± this, %. */
  readonly spreadPct: number
  readonly source: string
}

export interface ScrewSpec {
  readonly standard: ScrewStandard
  readonly size: MetricSize
  /** Nominal: under the head, but over all for a countersunk screw. */
  readonly lengthMm: number
  readonly material: HardwareMaterial
}

export interface NutSpec {
  readonly standard: NutStandard
  readonly size: MetricSize
  readonly material: HardwareMaterial
}

/** ISO 7089. */
export interface WasherSpec {
  readonly size: MetricSize
  readonly material: HardwareMaterial
}

/** Threaded right through, no thread standing out. */
export interface StandoffSpec {
  readonly shape: StandoffShape
  readonly size: MetricSize
  readonly lengthMm: number
  readonly material: HardwareMaterial
  /** Across the flats of a hex, or the diameter of a round one; left out, the usual one. */
  readonly acrossMm?: number
}

/** Brass, set with heat. */
export interface InsertSpec {
  readonly size: MetricSize
  readonly lengthMm: number
}
