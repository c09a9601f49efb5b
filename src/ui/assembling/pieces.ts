import type { LoosePiece } from '../../core/joints/waysFor.ts'
import type { StandingPiece } from '../../core/joints/standingPieces.ts'
import type { ItemBody } from '../../core/model/aircraft.ts'
import type { Part } from '../../core/model/frame.ts'
import type { JointEnd } from '../../core/model/joints.ts'

/** A printed part, or a bought thing with a body. */
export interface Joinable extends Pick<Part, 'id' | 'name' | 'quantity' | 'mirrored'> {
  /** Its number in the list; of a bought thing a letter. */
  readonly label: string
  /** Of a bought thing. */
  readonly body?: ItemBody
}

/** Pieces of one part and one hand that hang in the air. */
export interface LooseKind {
  readonly key: string
  readonly part: Joinable
  readonly isMirrored: boolean
  readonly pieces: readonly LoosePiece[]
}

/** Of a part of more pieces than this the others wait until these are joined. */
const MOST_PIECES = 64

/** What of the frame has no place yet, in the order of the list. */
export function looseKinds(
  parts: readonly Joinable[],
  standing: readonly StandingPiece[],
): readonly LooseKind[] {
  const stands = new Set(standing.map(({ partId, piece }) => `${piece} ${partId}`))
  return parts.flatMap((part) => {
    const pieces = Array.from({ length: Math.min(MOST_PIECES, part.quantity) }, (_, piece) => ({
      partId: part.id,
      piece,
      isMirrored: piece >= part.quantity - part.mirrored,
    })).filter(({ piece }) => !stands.has(`${piece} ${part.id}`))
    return [false, true].flatMap((isMirrored): LooseKind[] => {
      const own = pieces.filter((each) => each.isMirrored === isMirrored)
      const key = `${part.id} ${isMirrored}`
      return own.length === 0 ? [] : [{ key, part, isMirrored, pieces: own }]
    })
  })
}

/** A piece by the name of its part, and its number where there are several. */
export function pieceName(
  parts: readonly Joinable[],
  { partId, piece }: Pick<JointEnd, 'partId' | 'piece'>,
): string {
  const part = parts.find(({ id }) => id === partId)
  if (part === undefined) return 'removed part'
  return part.quantity > 1 ? `${part.name} ${piece + 1}` : part.name
}

/** What a piece's part, or bought thing, is called in the list: `1 on 3`, `A on 1`. */
export function labelOf(
  parts: readonly Joinable[],
  { partId }: Pick<JointEnd, 'partId' | 'piece'>,
): string {
  return parts.find(({ id }) => id === partId)?.label ?? '–'
}

/** The body of a bought thing; undefined of a printed part. */
export function bodyIn(parts: readonly Joinable[], id: string): ItemBody | undefined {
  return parts.find((each) => each.id === id)?.body
}
