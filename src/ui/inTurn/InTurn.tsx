import { Children, useEffect, useState, type ReactNode } from 'react'

/**
 * Mounts its children one after the other, each in a task of its own, so that a long page does not
 * keep input waiting.
 */
export function InTurn({ children }: { readonly children: ReactNode }) {
  const all = Children.toArray(children)
  const [shown, setShown] = useState(0)
  const isWaiting = shown < all.length
  useEffect(() => {
    if (!isWaiting) return
    const timer = setTimeout(() => {
      setShown(shown + 1)
    })
    return () => {
      clearTimeout(timer)
    }
  }, [shown, isWaiting])
  return all.slice(0, shown)
}
