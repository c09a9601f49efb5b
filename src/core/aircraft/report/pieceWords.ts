import type { FastenerSpace } from '../hardware/screwSpaces.ts'
import type { JointEnd } from '../../model/joints.ts'

/** What is asked of a printed part, or of a bought thing with a body, to name its pieces. */
export interface NamedPieces {
  readonly id: string
  readonly name: string
  readonly quantity: number
}

type Piece = Pick<JointEnd, 'partId' | 'piece'>

export function nameOf({ partId }: Piece, pieces: readonly NamedPieces[]): string {
  return pieces.find(({ id }) => id === partId)?.name ?? 'a part that is gone'
}

/** `Lower deck`, `Front arm 2`: the piece where there are several. */
export function pieceWords(piece: Piece, pieces: readonly NamedPieces[]): string {
  const count = pieces.find(({ id }) => id === piece.partId)?.quantity ?? 0
  return nameOf(piece, pieces) + (count > 1 ? ` ${piece.piece + 1}` : '')
}

/** `Lower deck – Front arm 2`. */
export function jointWords(
  { a, b }: { readonly a: Piece; readonly b: Piece },
  pieces: readonly NamedPieces[],
): string {
  return `${pieceWords(a, pieces)} – ${pieceWords(b, pieces)}`
}

const SPACES = { head: 'head', nut: 'nut', end: 'screw end' } as const

/** `a head`, `3 screw ends`. */
export function spaceWords(kind: FastenerSpace['kind'], count: number): string {
  return count === 1 ? `a ${SPACES[kind]}` : `${count} ${SPACES[kind]}s`
}
