import { METRIC, showUnits } from '../core/words/shownUnits.ts'
import { useAppState } from './appContext.ts'

/**
 * Has everything written in the builder's units. Text does not hear of a change by itself: what
 * shows figures has the key that is given, and is drawn anew when it changes.
 */
export function useShownUnits(): string {
  const units = useAppState(({ workshop }) => workshop.units ?? METRIC)
  // Before what is below is drawn, in this very pass. Setting it twice is the same as once.
  showUnits(units)
  return `${units.length} ${units.mass}`
}
