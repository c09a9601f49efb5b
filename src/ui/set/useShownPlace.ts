import { useEffect, useState } from 'react'
import type { PlaceId } from './address.ts'

/**
 * The place to draw: the one that is gone to, a frame of the screen later, so that its link answers
 * before the sheet is drawn.
 */
export function useShownPlace(wanted: PlaceId): PlaceId {
  const [shown, setShown] = useState(wanted)
  useEffect(() => {
    if (shown === wanted) return
    let timer: ReturnType<typeof setTimeout> | undefined
    const go = () => {
      timer = setTimeout(() => {
        setShown(wanted)
      })
    }
    // A page that is not looked at has no frames to wait for.
    if (document.hidden) go()
    const frame = document.hidden ? null : requestAnimationFrame(go)
    return () => {
      if (frame !== null) cancelAnimationFrame(frame)
      clearTimeout(timer)
    }
  }, [shown, wanted])
  return shown
}
