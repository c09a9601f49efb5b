import type { Aircraft } from '../model/aircraft.ts'
import type { Joint } from '../model/joints.ts'
import { bodiedItems, itemPieces, typedMotion } from './itemPieces.ts'
import type { PlacedPart, PlacedPieces } from './placePieces.ts'
import { pieceKey, placePieces } from './placePieces.ts'

interface Known {
  readonly typed: Aircraft['places']
  readonly items: Aircraft['items']
  readonly parts: readonly PlacedPart[]
  readonly placed: PlacedPieces
}

/** What was found for joints, as long as they are the same. */
const known = new WeakMap<readonly Joint[], Known>()

/**
 * Where the pieces of a frame are, for whoever draws, balances or tells them: from joints where one
 * leads there, else as typed. Bought things with a body are pieces, too: `motions` has them,
 * `places` has not. The same object while nothing it rests on has changed.
 */
export function framePlaces(
  parts: readonly PlacedPart[],
  { places: typed, joints, items }: Pick<Aircraft, 'places' | 'joints' | 'items'>,
): PlacedPieces {
  const before = known.get(joints)
  if (before?.typed === typed && isSame(before.parts, parts) && areAlike(before.items, items)) {
    return before.placed
  }
  const placed = withBodies(parts, typed, joints, items)
  known.set(joints, { typed, items, parts, placed })
  return placed
}

function withBodies(
  parts: readonly PlacedPart[],
  typed: Aircraft['places'],
  joints: readonly Joint[],
  items: Aircraft['items'],
): PlacedPieces {
  const bodied = bodiedItems(items)
  if (bodied.length === 0) return placePieces(parts, typed, joints)
  const placed = placePieces([...parts, ...itemPieces(items)], typed, joints)
  const ids = new Set(bodied.map(({ id }) => id))
  const motions = new Map(placed.motions)
  for (const item of bodied) {
    const key = pieceKey({ partId: item.id, piece: 0 })
    const motion = motions.has(key) ? null : typedMotion(item)
    if (motion !== null) motions.set(key, motion)
  }
  return { ...placed, motions, places: placed.places.filter(({ partId }) => !ids.has(partId)) }
}

/** Whether nothing has changed by which a bought thing has its place. */
function areAlike(one: Aircraft['items'], other: Aircraft['items']): boolean {
  if (one === other) return true
  const [a, b] = [bodiedItems(one), bodiedItems(other)]
  return (
    a.length === b.length &&
    a.every((item, i) => {
      const { id, body, positionMm, quantity } = b[i]!
      return (
        item.id === id &&
        item.body === body &&
        item.positionMm === positionMm &&
        item.quantity === quantity
      )
    })
  )
}

function isSame(one: readonly PlacedPart[], other: readonly PlacedPart[]): boolean {
  return (
    one === other ||
    (one.length === other.length &&
      one.every((part, i) => {
        const { id, unit, quantity, drawnPlaces } = other[i]!
        return (
          part.id === id &&
          part.unit === unit &&
          part.quantity === quantity &&
          part.drawnPlaces === drawnPlaces
        )
      }))
  )
}
