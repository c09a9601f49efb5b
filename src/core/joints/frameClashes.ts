import type { Joint, JointEnd } from '../model/joints.ts'
import type { Shared } from './clashes.ts'
import type { StandingPiece } from './standingPieces.ts'

/** Less than this in each other is how facets lie. mm³ */
export const CLASH_MM3 = 1

/** Places in a list of standing pieces. */
export type PiecePair = readonly [one: number, other: number]

/**
 * The pairs of pieces that may not be in each other: all but those that a joint presses together,
 * whose facets cross, and propellers with each other, whose discs are only where their blades may
 * pass.
 *
 * @param isSwept of a piece that is only a disc it sweeps.
 */
export function clashPairs(
  standing: readonly Pick<StandingPiece, 'partId' | 'piece'>[],
  joints: readonly Joint[],
  isSwept: (partId: string) => boolean = () => false,
): readonly PiecePair[] {
  return standing.flatMap((p, one) =>
    standing.slice(one + 1).flatMap((q, k): readonly PiecePair[] => {
      if (isSwept(p.partId) && isSwept(q.partId)) return []
      return joints.some((joint) => isPressed(joint, p, q)) ? [] : [[one, one + 1 + k]]
    }),
  )
}

type Piece = Pick<JointEnd, 'partId' | 'piece'>

function isPressed({ a, b }: Joint, p: Piece, q: Piece): boolean {
  const hasPeg = [a, b].some(({ bores }) => bores.some(({ kind }) => kind === 'peg'))
  return hasPeg && ((isAt(a, p) && isAt(b, q)) || (isAt(a, q) && isAt(b, p)))
}

function isAt(end: Piece, { partId, piece }: Piece): boolean {
  return end.partId === partId && end.piece === piece
}

/** Two pieces that run into each other. */
export interface PieceClash extends Shared {
  readonly a: Piece
  readonly b: Piece
}

/** Those of the pairs that are in each other by more than facets are, the largest first. */
export function clashesAmong(
  standing: readonly Piece[],
  pairs: readonly PiecePair[],
  shared: readonly Shared[],
): readonly PieceClash[] {
  return pairs
    .flatMap(([one, other], i): readonly PieceClash[] => {
      const [a, b, own] = [standing[one], standing[other], shared[i]]
      if (a === undefined || b === undefined || own === undefined) return []
      return own.volumeMm3 <= CLASH_MM3 ? [] : [{ a, b, ...own }]
    })
    .toSorted((one, other) => other.volumeMm3 - one.volumeMm3)
}
