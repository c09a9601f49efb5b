import { startTransition, useEffect, useReducer } from 'react'
import type { AppState } from '../state/store/types.ts'
import { useStoreItself } from './appContext.ts'
import { useIsPrinting } from './useIsPrinting.ts'

/**
 * Reads what only tells of the frame: drawn after the field under a hand, and never in its way, but
 * for paper at once. Not for what is typed in, which must not show an old value.
 *
 * @param select must be the same function from one drawing to the next.
 */
export function useLateAppState<T>(select: (state: AppState) => T): T {
  const store = useStoreItself()
  // A reducer reckons when it is drawn, where a state's updater would within the press; and what it
  // reads is the newest, so that of many presses only the last is reckoned.
  const read = () => select(store.getState())
  const [shown, look] = useReducer(read, null, read)
  useEffect(() => {
    const later = () => {
      startTransition(() => {
        look()
      })
    }
    later()
    return store.subscribe(later)
  }, [store])
  return useIsPrinting() ? read() : shown
}
