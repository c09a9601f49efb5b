import type { AppState } from '../../state/store/types.ts'

/** Number of the part chosen for the whole set, from 1; the first where none is. */
export function chosenItem({ frame, openPartId }: AppState): number {
  return (
    Math.max(
      0,
      frame.parts.findIndex(({ id }) => id === openPartId),
    ) + 1
  )
}
