import type { Material, PartFigures, PlasticVolumes, Range } from '../model/figures.ts'
import type { Part } from '../model/frame.ts'
import type { PieceShare } from '../model/runs.ts'
import type { Change } from './weighIn.ts'
import type { FrameDoubt } from './frameDoubt.ts'
import type { Learned, LearnedHours } from './learned.ts'
import type { AircraftLedger } from './ledger.ts'

/** A printed part on its way into the frame. */
export interface FramePart {
  readonly part: Part
  readonly material: Material
  /** Of one piece, as calculated; null while there are none, or when there will be none. */
  readonly figures: PartFigures | null
  /** Hours and money of one piece in the print runs; left out where it is printed by itself. */
  readonly share?: PieceShare
  /** Could not be read or counted: it will get no figures. */
  readonly failed: boolean
}

/**
 * Where the mass of a piece comes from: from its figures; from the scale; or from its figures times
 * what the scale said of the piece as it was before something of it changed.
 */
export type MassFrom = 'calculated' | 'weighed' | 'weighed before'

/** Sums of some pieces. Volumes are plastic laid, by kind; `depositMm3` is their sum. */
export interface PieceSum extends PlasticVolumes {
  readonly pieces: number
  /** On the scale, supports and brim off; weighed pieces by the scale. */
  readonly massG: Range
  readonly cost: Range
  readonly timeS: Range
  readonly filamentM: number
}

/** A printed part that counts in the frame. */
export interface FrameRow {
  readonly part: Part
  readonly material: Material
  /**
   * Of one piece printed by itself, as calculated; null where the scale alone says what it weighs.
   * What it costs and takes in the print runs of the frame is in the sums below.
   */
  readonly figures: PartFigures | null
  readonly massFrom: MassFrom
  /**
   * Scale ÷ calculated; null where nothing was weighed or nobody knows what was calculated then.
   */
  readonly scaleRatio: number | null
  /**
   * What changed since it was weighed; empty where nothing was weighed and while the weighing
   * holds.
   */
  readonly changes: readonly Change[]
  /** One piece, as it counts everywhere. */
  readonly pieceG: Range
  /** The pieces that fly. */
  readonly flying: PieceSum
  /** The pieces in the bag. */
  readonly spares: PieceSum
  /** Both: what is printed and paid for. */
  readonly withSpares: PieceSum
  /** Shares (0–1) of the frame's flying pieces; 0 where the frame's figure is 0. */
  readonly massShare: number
  readonly costShare: number
  readonly timeShare: number
}

/** A printed part without figures. */
export interface LeftOut {
  readonly id: string
  readonly name: string
  /** `failed` parts will get no figures; the others are still being counted. */
  readonly why: 'failed' | 'not counted yet'
  /**
   * Its pieces were weighed as they are: the scale's grams are in every mass, and only cost, hours
   * and filament are without it. The others are in no sum.
   */
  readonly weighed: boolean
}

/**
 * Printed minus carbon: above zero the printed frame is heavier or dearer. Without the parts left
 * out of the frame.
 */
export interface CarbonDifference {
  readonly massG: Range
  /** Share of the carbon frame's mass; null when that is zero. */
  readonly massShare: Range | null
  readonly cost: Range
}

/** What the builder allows, g; null for no limit. */
export interface FrameLimits {
  readonly allUpG: number | null
  readonly printedG: number | null
  /** The stricter of the two for the printed pieces that fly. */
  readonly strictest: StrictestLimit | null
}

export interface StrictestLimit {
  readonly kind: 'all-up' | 'printed'
  /** In grams of printed parts: an all-up limit less everything bought, which may be below zero. */
  readonly printedG: number
  /** Limit − printed mass as it stands: below zero the frame is over. */
  readonly leftG: number
}

/** A reading of scale or clock that nothing explains. */
export interface StrayReading {
  /** Of the part whose pieces were weighed, of the weighing of the whole, of the clock time. */
  readonly id: string
  readonly value: number
  /** What everything else foretells, noise of the reading included. */
  readonly foretold: Range
  /** From where to where it would have been believed without asking. */
  readonly taken: Range
}

/** What came of a reading. */
export type ReadingFate =
  /** It counts, and everything that shares an error with what was read follows it. */
  | 'heard'
  /** Too far off to be believed. */
  | 'set aside'
  /** It is the mass of its part, which has no figures: nothing else follows. */
  | 'alone'
  /** Something of it has no figures yet, or will get none. */
  | 'waits'
  /** Of the whole, while a part weighs what nothing explains. */
  | 'part at odds'
  /** Something of it is no longer in the frame. */
  | 'part gone'
  /** Nobody knows what was calculated for it then, and what it was of has changed. */
  | 'not comparable'

/** A reading of scale or clock and what came of it. */
export interface ToldReading {
  /** Of the part whose pieces were weighed, of the weighing of the whole, of the clock time. */
  readonly id: string
  readonly kind: 'pieces' | 'printed' | 'all-up' | 'clock' | 'file' | 'file time'
  readonly name: string
  /** On the scale or in the print; null for the whole. */
  readonly pieces: number | null
  /** Net and all together: g, or s by the clock or a file; of a file's plastic mm³. */
  readonly value: number
  /** Reading ÷ what was calculated then; null where nobody knows. */
  readonly ratio: number | null
  readonly fate: ReadingFate
}

/** The one frame: whatever says a mass, a cost or hours of it reads them here. */
export interface FrameSum {
  /** Parts that count: with figures, or by the scale alone; in the frame's order. */
  readonly rows: readonly FrameRow[]
  readonly leftOut: readonly LeftOut[]
  /** Of all parts, those that are in no sum too. */
  readonly pieces: { readonly flying: number; readonly spares: number }
  /** The printed pieces that fly. */
  readonly printed: PieceSum
  readonly spares: PieceSum
  /** Both: what is printed and paid for. */
  readonly withSpares: PieceSum
  /** Printed pieces and everything bought. */
  readonly allUpG: Range
  readonly ledger: AircraftLedger
  readonly limits: FrameLimits
  /** Null when there is nothing to compare with. */
  readonly carbon: CarbonDifference | null
  /** What every range here was made from. */
  readonly doubt: FrameDoubt
  /** Readings too far off to be believed; they taught nothing. */
  readonly strays: readonly StrayReading[]
  /** What weighings taught of the spools in use, those of earlier frames with them. */
  readonly learned: readonly Learned[]
  /** What the clock taught of the printer; null where no print was timed. */
  readonly learnedHours: LearnedHours | null
  /** Every reading of the frame, and what came of it. */
  readonly readings: readonly ToldReading[]
}
