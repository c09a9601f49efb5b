import { useSyncExternalStore } from 'react'

/** Where a change that is looked at, not made, would move the frame. */
export interface Ghost {
  /** Printed mass of the frame then, g. */
  readonly massG: number
  /** The change in two or three words, for its mark on the ruler. */
  readonly words: string
}

let shown: Ghost | null = null
const listeners = new Set<() => void>()

/** Shows a change on the ruler while it is pointed at or has the focus; null takes it off. */
export function showGhost(ghost: Ghost | null): void {
  if (shown === ghost) return
  shown = ghost
  for (const tell of listeners) tell()
}

export function useGhost(): Ghost | null {
  return useSyncExternalStore(subscribe, () => shown)
}

function subscribe(tell: () => void): () => void {
  listeners.add(tell)
  return () => {
    listeners.delete(tell)
  }
}
