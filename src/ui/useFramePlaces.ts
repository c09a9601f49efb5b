import type { PlacedPieces } from '../core/joints/placePieces.ts'
import { framePlaces } from '../core/joints/framePlaces.ts'
import { useAppState } from './appContext.ts'

/** Where the pieces of the present frame are. */
export function useFramePlaces(): PlacedPieces {
  return useAppState(({ frame }) => framePlaces(frame.parts, frame.aircraft))
}
