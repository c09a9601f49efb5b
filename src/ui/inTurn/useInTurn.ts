import { useEffect, useState } from 'react'

/**
 * Lets a long list in little by little, so that a frame of fifty parts does not keep input waiting
 * while it is drawn.
 *
 * @param ids of the whole list, in its order.
 * @param atOnce how many are let in in one task.
 * @returns the ids to draw by now.
 */
export function useInTurn(ids: readonly string[], atOnce: number): ReadonlySet<string> {
  const [shown, setShown] = useState<ReadonlySet<string>>(() => new Set())
  const next = ids.filter((id) => !shown.has(id)).slice(0, atOnce)
  const waiting = next.join(' ')
  useEffect(() => {
    if (waiting === '') return
    const timer = setTimeout(() => {
      setShown((before) => new Set([...before, ...waiting.split(' ')]))
    })
    return () => {
      clearTimeout(timer)
    }
  }, [waiting])
  return shown
}
