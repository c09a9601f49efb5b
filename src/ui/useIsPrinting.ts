import { useSyncExternalStore } from 'react'
import { flushSync } from 'react-dom'

let isPrinting = false

function watch(onChange: () => void): () => void {
  const begin = (): void => {
    isPrinting = true
    // The page is laid out for paper as soon as this event is over.
    flushSync(onChange)
  }
  const end = (): void => {
    isPrinting = false
    onChange()
  }
  addEventListener('beforeprint', begin)
  addEventListener('afterprint', end)
  return () => {
    removeEventListener('beforeprint', begin)
    removeEventListener('afterprint', end)
  }
}

/** Whether the page is being put on paper, or saved as PDF. */
export function useIsPrinting(): boolean {
  return useSyncExternalStore(watch, () => isPrinting)
}
