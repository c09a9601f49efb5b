import { useDeferredValue } from 'react'
import { useIsPrinting } from './useIsPrinting.ts'

/**
 * A value for what only tells of it: drawn after the field under a hand. Paper waits for nothing,
 * so there it is the newest.
 */
export function useLate<T>(value: T): T {
  const late = useDeferredValue(value)
  return useIsPrinting() ? value : late
}
