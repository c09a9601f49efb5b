import { useCallback, useSyncExternalStore } from 'react'

let pointed: string | null = null
let next: string | null = null
const listeners = new Set<() => void>()

/**
 * Says which part is pointed at or has the focus, in the drawing or in the list; null for none.
 * Kept beside the page's state, so that only what lights up or goes out is drawn for it.
 */
export function pointAt(partId: string | null): void {
  next = partId
  // From one to the next is one change, not two.
  if (partId === null) requestAnimationFrame(settle)
  else settle()
}

function settle(): void {
  if (pointed === next) return
  pointed = next
  for (const tell of listeners) tell()
}

/** Whether this part is the one. */
export function useIsPointedAt(partId: string): boolean {
  return useSyncExternalStore(
    subscribe,
    useCallback(() => pointed === partId, [partId]),
  )
}

/** Tells of every change, until the function it returns is called. */
export function watchPointed(tell: (partId: string | null) => void): () => void {
  return subscribe(() => {
    tell(pointed)
  })
}

function subscribe(tell: () => void): () => void {
  listeners.add(tell)
  return () => {
    listeners.delete(tell)
  }
}
