import { rangeOf } from '../doubt/bell.ts'
import type { FrameDoubt, PieceKind } from './frameDoubt.ts'
import type { PieceSum } from './types.ts'
import type { PartFigures } from '../model/figures.ts'
import { ZERO_RANGE } from '../model/ranges.ts'

/** So many pieces with the same figures. */
export interface CountedPieces {
  readonly id: string
  readonly pieces: number
  /** Of one piece; null where nothing was calculated. */
  readonly figures: Pick<PartFigures, VolumeKind> | null
}

/** What one piece is laid as. */
export type VolumeKind =
  | 'depositMm3'
  | 'wallMm3'
  | 'gapMm3'
  | 'skinMm3'
  | 'strandMm3'
  | 'infillMm3'
  | 'supportMm3'
  | 'brimMm3'

type Sums = { -readonly [K in keyof PieceSum]: PieceSum[K] }

const NO_PIECES: PieceSum = {
  pieces: 0,
  massG: ZERO_RANGE,
  cost: ZERO_RANGE,
  timeS: ZERO_RANGE,
  filamentM: 0,
  depositMm3: 0,
  wallMm3: 0,
  gapMm3: 0,
  skinMm3: 0,
  strandMm3: 0,
  infillMm3: 0,
  supportMm3: 0,
  brimMm3: 0,
}

/** Sums pieces of one kind, flying or in the bag: what is unsure of them by the model of doubt. */
export function pieceSum(
  doubt: FrameDoubt,
  kind: PieceKind,
  counted: readonly CountedPieces[],
): PieceSum {
  if (counted.every(({ pieces }) => pieces === 0)) return NO_PIECES
  const sum: Sums = { ...NO_PIECES }
  for (const { pieces, figures } of counted) {
    sum.pieces += pieces
    if (figures === null) continue
    sum.depositMm3 += pieces * figures.depositMm3
    sum.wallMm3 += pieces * figures.wallMm3
    sum.gapMm3 += pieces * figures.gapMm3
    sum.skinMm3 += pieces * figures.skinMm3
    sum.strandMm3 += pieces * figures.strandMm3
    sum.infillMm3 += pieces * figures.infillMm3
    sum.supportMm3 += pieces * figures.supportMm3
    sum.brimMm3 += pieces * figures.brimMm3
  }
  const ids = counted.map(({ id }) => id)
  sum.massG = rangeOf(doubt.bell('mass', kind, ids))
  sum.cost = rangeOf(doubt.bell('cost', kind, ids))
  sum.timeS = rangeOf(doubt.bell('time', kind, ids))
  sum.filamentM = rangeOf(doubt.bell('filament', kind, ids)).mid
  return sum
}
