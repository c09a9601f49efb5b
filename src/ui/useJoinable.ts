import { useMemo } from 'react'
import { itemPieces } from '../core/joints/itemPieces.ts'
import type { Part } from '../core/model/frame.ts'
import { useAppState } from './appContext.ts'
import type { Joinable } from './assembling/pieces.ts'

/**
 * All that joints can hold: printed parts in the order of the list, then bought things with a body.
 */
export function useJoinable(): readonly Joinable[] {
  const parts = useAppState((state) => state.frame.parts)
  const items = useAppState((state) => state.frame.aircraft.items)
  return useMemo(
    () => [
      ...parts.map((part: Part, i): Joinable => ({ ...named(part), label: String(i + 1) })),
      ...itemPieces(items).map((item, i): Joinable => ({
        ...named(item),
        body: item.body,
        label: letters(i),
      })),
    ],
    [parts, items],
  )
}

function named({
  id,
  name,
  quantity,
  mirrored,
}: Pick<Part, 'id' | 'name' | 'quantity' | 'mirrored'>) {
  return { id, name, quantity, mirrored }
}

/** A to Z, then AA. */
function letters(place: number): string {
  const letter = String.fromCodePoint(65 + (place % 26))
  return place < 26 ? letter : letters(Math.floor(place / 26) - 1) + letter
}
