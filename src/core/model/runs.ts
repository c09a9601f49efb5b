/** Pieces layer by layer over the whole bed, or one after the other. */
export type PrintOrder = 'together' | 'one at a time'

/**
 * How pieces are divided into print runs: on as few beds as they go; so that each is done in an
 * evening, or by the next morning; or so that what failed prints cost is least.
 */
export type RunWay = 'fewest beds' | 'evenings' | 'least loss'

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
}
