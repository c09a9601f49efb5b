import { useEffect, useEffectEvent, type RefObject } from 'react'

/** Calls `onRefused` when the box inside `place` lets something typed or pasted not in. */
export function useRefusedInput(place: RefObject<HTMLElement | null>, onRefused: () => void): void {
  const tell = useEffectEvent(onRefused)
  useEffect(() => {
    const around = place.current
    if (around === null) return
    // The box has its say first; what it refuses never becomes an input event.
    const listen = (event: Event) => {
      if (event.defaultPrevented) tell()
    }
    around.addEventListener('beforeinput', listen)
    return () => {
      around.removeEventListener('beforeinput', listen)
    }
  }, [place])
}
