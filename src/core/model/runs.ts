import type { FigureDoubt } from './doubt.ts'
import type { Range } from './figures.ts'

/** Pieces layer by layer over the whole bed, or one after the other. */
export type PrintOrder = 'together' | 'one at a time'

/**
 * How pieces are divided into print runs: on as few beds as they go; so that each is done in an
 * evening, or by the next morning; or so that what failed prints cost is least.
 */
export type RunWay = 'fewest beds' | 'evenings' | 'least loss'

/**
 * One piece on a bed. A point p of its placed mesh, mirrored in x or not, lies at (x, y) + p turned
 * by `turnDeg`.
 */
export interface Spot {
  readonly partId: string
  readonly xMm: number
  readonly yMm: number
  /** Counter-clockwise seen from above. */
  readonly turnDeg: number
  readonly mirrored?: true
  /** Of the printer whose bed it is, the same for all of a run; left out, the frame's own. */
  readonly printerId?: string
}

/** How the frame's pieces are printed. */
export interface RunSettings {
  readonly way: RunWay
  readonly order: PrintOrder
  /** Between any two pieces, brims included. */
  readonly gapMm: number
  /** Of the bed, kept free along every edge. */
  readonly marginMm: number
  /** Of a run that somebody sits by. */
  readonly eveningH: number
  /** One at a time: what the head needs free around its nozzle, and below what carries it. */
  readonly headMm: number
  readonly underHeadMm: number
  /**
   * Runs as somebody placed their pieces; what lies in none of them is laid. Left out or empty, all
   * are.
   */
  readonly byHand?: readonly (readonly Spot[])[]
  /** Ids of parts that are coupons: printed before all others, in runs without any of those. */
  readonly coupons?: readonly string[]
}

/**
 * Hours and money of one piece as it is printed, in runs with others: the mean over all pieces of
 * its part. A run's hours are shared by what its pieces would take alone, so that its start, its
 * least layer times and its ways belong to all of them; its money by plastic and by those hours.
 * All shares together are the hours and the money of the runs, to the last digit.
 */
export interface PieceShare {
  readonly timeS: Range
  readonly timeDoubt: FigureDoubt
  readonly cost: Range
  readonly costDoubt: FigureDoubt
}
