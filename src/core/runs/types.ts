import type { Pose } from '../model/settings.ts'

/** Where pieces can be laid, mm. */
export interface Bed {
  readonly widthMm: number
  readonly depthMm: number
  readonly heightMm: number
  /** Kept free along every edge. */
  readonly marginMm: number
}

/**
 * All that a piece covers of the bed as it lies: in cells, no larger anywhere than by one of them.
 */
export interface PieceOutline {
  readonly cellMm: number
  /** Cells along x and y. */
  readonly across: number
  readonly down: number
  /** 1 where the piece stands above the cell; row by row from the least y. */
  readonly cells: Uint8Array
  /** The least corner of the first cell, in the axes of the placed mesh. */
  readonly fromMm: readonly [x: number, y: number]
  /** Corners of the convex hull, x, y pairs, counter-clockwise: exact. */
  readonly hullMm: Float64Array
  readonly heightMm: number
  readonly areaMm2: number
}

/** A piece turned on the bed: its cells in rows of runs. */
export interface Stamp {
  readonly turnDeg: number
  /** Exact size with its brim. */
  readonly sizeMm: readonly [x: number, y: number]
  /** From its least corner, brim included, to the origin of the placed mesh. */
  readonly originMm: readonly [x: number, y: number]
  /** Cells along x and y. */
  readonly across: number
  readonly down: number
  /** From and past the last cell, in pairs; one list a row. */
  readonly runs: readonly Uint16Array[]
}

/** Pieces of one part, all alike on the bed. */
export interface LaidPart {
  readonly id: string
  readonly count: number
  /** How many of them are mirrored copies; left out, none. */
  readonly mirrored?: number
  readonly outline: PieceOutline
  readonly brimMm: number
}

/** Why a piece goes on no bed, and how it would. */
export interface Unfit {
  readonly partId: string
  readonly why: 'too tall' | 'too long'
  readonly partMm: number
  readonly limitMm: number
  /** The pose that goes on the bed; null where none of those tried does. */
  readonly wayOut: { readonly name: string; readonly pose: Pose } | null
}
