/**
 * How the lines of a part are broken into moves, as histograms small enough to keep and exact
 * enough that any printer's hours follow from them at once.
 *
 * A corner is told by σ = sin(half the turn): 0 straight on, 0.71 at a right angle, 1 back the way
 * it came.
 */
export interface CensusMoves {
  /**
   * Runs of all laps around the contours of every layer, as many as fit; one table per corner limit
   * of `CORNER_LIMITS`.
   */
  readonly wall: readonly RunTable[]
  /** Length of those laps, taken along the outline itself. mm */
  readonly wallLapMm: number
  /** The same around contours no longer than `SMALL_LOOP_MM`, which are not among those above. */
  readonly smallLoop: readonly RunTable[]
  readonly smallLapMm: number
  /** Skin lines, straight across S_i. */
  readonly skin: LineTable
  /** Infill lines, straight across P_i. */
  readonly room: LineTable
  /**
   * Moves without plastic where infill runs one way on each layer, along x and along y by turns.
   */
  readonly oneWay: Travels
  /** Moves without plastic where infill runs along x and along y on every layer. */
  readonly crossed: Travels
  /** How the moves spread over the layers. */
  readonly byLayer: MovesByLayer
}

/**
 * A corner counts as one when σ is at least this; below, a run goes on. 6° to 68° in even ratios.
 */
export const CORNER_LIMITS: readonly number[] = [0.05, 0.07, 0.1, 0.14, 0.2, 0.28, 0.4, 0.56]

/**
 * A contour no longer than this is a small loop: a hole or pin of 9.5 mm (common practice, no
 * source).
 */
export const SMALL_LOOP_MM = 30

/** σ of an end where the head stands still: the start and the end of a line. */
export const STANDSTILL = 2

/** Runs between corners, alike ones together; all arrays as long. */
export interface RunTable {
  /** Mean length. mm */
  readonly lengthMm: Float32Array
  /** σ at the straighter and at the sharper end. */
  readonly gentle: Float32Array
  readonly sharp: Float32Array
  readonly count: Float32Array
}

/**
 * Parallel lines, alike ones together. Lines laid `spacingMm` apart number `acrossMm / spacingMm`
 * in each entry.
 */
export interface LineTable {
  /** Mean length. mm */
  readonly lengthMm: Float32Array
  /** Summed distance across the lines that they stand for, all layers. mm */
  readonly acrossMm: Float32Array
  /**
   * Way along the boundary ÷ way across the lines, from the end of one line to the next: 1 where
   * the edge is square to them.
   */
  readonly slant: number
}

/**
 * Moves without plastic over all layers. A zigzag goes back and forth until nothing leads on: one a
 * region, and one more wherever it splits around something or the next line lies too far along the
 * edge.
 */
export interface Travels {
  /** To every wall line but the first of a layer: from outline to outline, from line to line. */
  readonly wall: TravelTable
  /** To every zigzag of skin. */
  readonly skin: TravelTable
  /** From there back to the walls, where there is no infill. */
  readonly back: TravelTable
  /**
   * To every zigzag of infill and then back to the walls, with lines at several distances, the
   * narrowest first.
   */
  readonly infill: readonly InfillTravels[]
  /**
   * How many of them there are on each layer, bottom first, up to `RETRACT_BEYOND_MM` and beyond
   * it; at a usual spacing.
   */
  readonly nearHops: Float32Array
  readonly farHops: Float32Array
}

export interface InfillTravels {
  readonly spacingMm: number
  readonly hops: TravelTable
  readonly back: TravelTable
}

/** One value a layer, bottom first. */
export interface MovesByLayer {
  /**
   * Length of the outermost wall lines, those of small loops left out, and of all lines of small
   * loops.
   */
  readonly outerMm: Float32Array
  readonly smallMm: Float32Array
  /** How many contours are small loops. */
  readonly smallLoops: Float32Array
  /** Laid length and number of skin lines, and of infill lines one line width apart. */
  readonly skinMm: Float32Array
  readonly skinLines: Float32Array
  readonly roomMm: Float32Array
  readonly roomLines: Float32Array
}

/**
 * Moves without plastic, alike ones together; none of them on both sides of `RETRACT_BEYOND_MM`.
 */
export interface TravelTable {
  /** Mean length. mm */
  readonly lengthMm: Float32Array
  readonly count: Float32Array
}

/**
 * A move without plastic no longer than this leaves the filament where it is (common practice, no
 * source).
 */
export const RETRACT_BEYOND_MM = 1.5
