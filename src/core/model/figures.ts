import type { FigureDoubt } from './doubt.ts'
import type { KnownHabits } from './habits.ts'

/** A figure that is uncertain: `low` ≤ `mid` ≤ `high`, all in the unit the field name states. */
export interface Range {
  readonly low: number
  readonly mid: number
  readonly high: number
}

/** The way that the head goes without laying plastic. */
export interface TravelPath {
  readonly travelM: number
  /** How often the filament is drawn back for it. */
  readonly retracts: number
}

/** Plastic laid, before density, by kind. */
export interface PlasticVolumes {
  /** Walls + skins + infill + supports + brim. */
  readonly depositMm3: number
  readonly wallMm3: number
  /** The part of `wallMm3` in lines narrower than a whole one, in the gaps between wall lines. */
  readonly gapMm3: number
  readonly skinMm3: number
  /** The part of `skinMm3` laid as strands, over sparse rooms and over air. */
  readonly strandMm3: number
  /** Infill lines with their turns. */
  readonly infillMm3: number
  /** Removed after printing; in cost and hours and on the spool, not in `massG`. */
  readonly supportMm3: number
  /** Removed after printing; in cost and hours and on the spool, not in `massG`. */
  readonly brimMm3: number
}

/** What one piece of a part takes off the spool, out of the purse and off the clock. */
export interface PartFigures extends PlasticVolumes {
  /** Share (0–1) of `infillMm3` that lies in the turns at line ends. */
  readonly turnShare: number
  /** Share (0–1) of the kept plastic that does not change with infill. */
  readonly solidShare: number
  /** On the scale, supports and brim removed. */
  readonly massG: Range
  /** Off the spool, supports and brim included. */
  readonly spoolG: Range
  readonly filamentM: Range
  readonly cost: CostRange
  readonly timeS: Range
  /** Null until the layers are counted. */
  readonly travel: TravelPath | null
  readonly doubt: PartDoubt
}

/**
 * How far the figures of one piece may be off, and with what else: what their ranges are made from.
 */
export interface PartDoubt {
  readonly mass: FigureDoubt
  readonly spool: FigureDoubt
  readonly filament: FigureDoubt
  readonly time: FigureDoubt
  readonly cost: FigureDoubt
}

/** Money, in the prices' own currency. */
export interface CostRange extends Range {
  readonly filament: number
  readonly electricity: number
  readonly wear: number
  readonly failures: number
}

/**
 * A number with where it comes from. `mark` follows the check values: READ, DERIVED, MEMORY (gates
 * nothing), WEAK, or ours.
 */
export interface Sourced {
  readonly value: number
  readonly mark: SourceMark
  readonly source: string
}

export type SourceMark = 'read' | 'derived' | 'memory' | 'weak' | 'common practice' | 'user'

export interface Material {
  readonly id: string
  readonly name: string
  readonly densityGCm3: Sourced
  /** The spread the sources show; narrowed to ±1 % when the user types the spool's own density. */
  readonly densityRangeGCm3: readonly [low: number, high: number]
  /** False until the user typed the spool's own density. */
  readonly densityTyped: boolean
  readonly pricePerKg: Sourced
  readonly diameterMm: number
  /**
   * 1 for plain filament; foaming filament is laid with less, and its plastic swells to fill the
   * line.
   */
  readonly flow: number
  readonly youngsGPa: Sourced
  readonly strengthInPlaneMPa: Sourced
  readonly strengthAcrossMPa: Sourced
  readonly heatLimitC: Sourced
  readonly shrinkagePct: Sourced
  /** What it is usually printed at; with the bed it decides what the printer draws. */
  readonly nozzleC: Sourced
  /** 20 for a bed that is not heated. */
  readonly bedC: Sourced
}

/**
 * What may be known of a printer besides; what is left out follows another of its speeds, see
 * `data/printerMore.ts`.
 */
export interface PrinterMore {
  /** Of the outermost wall line. */
  readonly outerWallMmS?: number
  /** Of every line around holes and pins no longer than `SMALL_LOOP_MM`. */
  readonly smallLoopMmS?: number
  readonly gapMmS?: number
  /** Of skin that nothing lies on. */
  readonly topSkinMmS?: number
  readonly strandMmS?: number
  /** A layer that must take longer is not slowed below this. */
  readonly floorMmS?: number
}

export interface Printer extends PrinterMore {
  readonly id: string
  readonly name: string
  /** Of wall lines but the outermost. */
  readonly wallMmS: number
  readonly skinMmS: number
  readonly infillMmS: number
  readonly firstLayerMmS: number
  readonly travelMmS: number
  /** Of skin and infill lines. */
  readonly accelMmS2: number
  /** Of wall lines. */
  readonly wallAccelMmS2: number
  /** Of moves without plastic. */
  readonly travelAccelMmS2: number
  /** Speed a corner of 90° may be taken at. */
  readonly cornerMmS: number
  /** Melt limit. */
  readonly flowMm3S: number
  readonly layerChangeS: number
  /** Drawing the filament back before a longer travel and pushing it forward after. */
  readonly retractS: number
  /** A layer is slowed until it takes this long, so that it can set. */
  readonly leastLayerS: number
  /** Real hours ÷ estimated hours of prints the user timed; null until then. */
  readonly clockFactor: number | null
  /** Heat-up and start routine, once a print. */
  readonly startS: number
  /**
   * Mean draw from the wall while it prints PLA; other plastics draw more or less, see `powerOf`.
   */
  readonly powerW: number
  readonly bedMm: readonly [x: number, y: number, z: number]
  /** What is known of how it lays what the geometry leaves open; left out where nothing is. */
  readonly habits?: KnownHabits
}

export interface Prices {
  /** ISO 4217. */
  readonly currency: string
  readonly electricityPerKwh: number
  readonly wearPerHour: number
  /** Purge, failed starts and ends of spools, % of filament. */
  readonly wastePct: number
  /** Of the prints still running, how many fail in the next hour, %. */
  readonly failurePctPerHour: number
}
