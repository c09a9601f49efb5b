import { rangeOf } from '../doubt/bell.ts'
import type { FrameDoubt, FrameFigure, PieceKind } from './frameDoubt.ts'
import type { PieceSum } from './types.ts'
import type { PartFigures, Range } from '../model/figures.ts'

/** So many pieces with the same figures. */
export interface CountedPieces {
  readonly id: string
  readonly pieces: number
  /** Of one piece; null where nothing was calculated. */
  readonly figures: Pick<PartFigures, Volume> | null
}

type Volume =
  | 'depositMm3'
  | 'wallMm3'
  | 'gapMm3'
  | 'skinMm3'
  | 'strandMm3'
  | 'infillMm3'
  | 'supportMm3'
  | 'brimMm3'

/** Sums pieces of one kind, flying or in the bag: what is unsure of them by the model of doubt. */
export function pieceSum(
  doubt: FrameDoubt,
  kind: PieceKind,
  counted: readonly CountedPieces[],
): PieceSum {
  const ids = counted.map(({ id }) => id)
  const range = (figure: FrameFigure): Range => rangeOf(doubt.bell(figure, kind, ids))
  const sum = (pick: (one: Pick<PartFigures, Volume>) => number): number =>
    counted.reduce(
      (total, { pieces, figures }) => total + (figures === null ? 0 : pieces * pick(figures)),
      0,
    )
  return {
    pieces: counted.reduce((total, { pieces }) => total + pieces, 0),
    massG: range('mass'),
    cost: range('cost'),
    timeS: range('time'),
    filamentM: range('filament').mid,
    depositMm3: sum(({ depositMm3 }) => depositMm3),
    wallMm3: sum(({ wallMm3 }) => wallMm3),
    gapMm3: sum(({ gapMm3 }) => gapMm3),
    skinMm3: sum(({ skinMm3 }) => skinMm3),
    strandMm3: sum(({ strandMm3 }) => strandMm3),
    infillMm3: sum(({ infillMm3 }) => infillMm3),
    supportMm3: sum(({ supportMm3 }) => supportMm3),
    brimMm3: sum(({ brimMm3 }) => brimMm3),
  }
}
