import type { RigidMap } from '../mesh/rigidMaps.ts'
import type { PlacedPieces } from './placePieces.ts'

/** A piece that has a place. */
export interface StandingPiece {
  readonly partId: string
  /** 0-based among the part's pieces that fly. */
  readonly piece: number
  /** Where its part's mesh goes on the aircraft, mirror image and all. mm */
  readonly motion: RigidMap
  readonly isMirrored: boolean
}

/** What stands, in the order of the list. */
export function standingPieces(
  parts: readonly { readonly id: string }[],
  { motions }: Pick<PlacedPieces, 'motions'>,
): readonly StandingPiece[] {
  const order = new Map(parts.map(({ id }, i) => [id, i]))
  return [...motions]
    .map(([key, motion]): StandingPiece => {
      const gap = key.indexOf(' ')
      const [piece, partId] = [Number(key.slice(0, gap)), key.slice(gap + 1)]
      return { partId, piece, motion, isMirrored: isImage(motion) }
    })
    .filter(({ partId }) => order.has(partId))
    .toSorted(
      (one, other) =>
        (order.get(one.partId) ?? 0) - (order.get(other.partId) ?? 0) || one.piece - other.piece,
    )
}

/** Whether a map turns right-handed axes into left-handed ones. */
export function isImage({ matrix: [a, b, c, d, e, f, g, h, i] }: RigidMap): boolean {
  return a * (e * i - f * h) - b * (d * i - f * g) + c * (d * h - e * g) < 0
}
