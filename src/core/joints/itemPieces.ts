import type { Aircraft, Item, ItemBody } from '../model/aircraft.ts'
import type { RigidMap } from '../mesh/rigidMaps.ts'
import { STAY } from '../mesh/rigidMaps.ts'
import { minus } from '../model/vectors.ts'
import type { BoreMark } from '../model/joints.ts'
import { boresOf } from './boresOf.ts'
import { bodyMiddle, itemMesh } from './itemMesh.ts'
import type { PlacedPart } from './placePieces.ts'

/** A bought item with a body. */
export interface BodiedItem extends Item {
  readonly body: ItemBody
}

/** Of an item of more pieces than this only so many have a body. */
const MOST_BODIES = 64

/** A bought item as something that joints can place: what is asked of a printed part, too. */
export interface ItemPiece extends PlacedPart {
  readonly name: string
  readonly mirrored: 0
  readonly body: ItemBody
}

/** Items whose body joints can hold, in the order of the list. */
export function bodiedItems(items: Aircraft['items']): readonly BodiedItem[] {
  return items.filter((item): item is BodiedItem => item.body !== undefined)
}

export function itemPieces(items: Aircraft['items']): readonly ItemPiece[] {
  return bodiedItems(items).map(({ id, name, quantity, body }): ItemPiece => ({
    id,
    name,
    quantity: Math.min(MOST_BODIES, quantity),
    unit: 'millimetre',
    mirrored: 0,
    body,
  }))
}

/** Ids of those that are only a disc they sweep. */
export function sweptOf(items: readonly ItemPiece[]): ReadonlySet<string> {
  return new Set(items.flatMap(({ id, body }) => (body.kind === 'prop' ? [id] : [])))
}

/**
 * Upright with its middle where the item's place was typed; null where nobody typed one for a
 * single piece.
 */
export function typedMotion({ body, positionMm, quantity }: BodiedItem): RigidMap | null {
  if (positionMm === null || quantity !== 1) return null
  return { ...STAY, move: minus(positionMm, bodyMiddle(body)) }
}

const bores = new WeakMap<ItemBody, readonly BoreMark[]>()

/** The bores of a body, found once. */
export function boresOfBody(body: ItemBody): readonly BoreMark[] {
  const known = bores.get(body)
  if (known !== undefined) return known
  const found = boresOf(itemMesh(body), 1)
  bores.set(body, found)
  return found
}
