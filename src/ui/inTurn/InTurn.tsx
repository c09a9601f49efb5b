import { Children, startTransition, useContext, useEffect, useState, type ReactNode } from 'react'
import { useIsPrinting } from '../useIsPrinting.ts'
import { StillDrawing } from './stillDrawing.ts'

/**
 * Mounts its children one after the other, each in tasks of its own that end for any input, so that
 * a long page does not keep it waiting; all of them at once when it goes on paper.
 */
export function InTurn({ children }: { readonly children: ReactNode }) {
  const all = Children.toArray(children)
  const [shown, setShown] = useState(0)
  const isWaiting = shown < all.length
  if (useIsPrinting() && isWaiting) setShown(all.length)
  const begin = useContext(StillDrawing)
  useEffect(() => (isWaiting ? begin?.() : undefined), [isWaiting, begin])
  useEffect(() => {
    if (!isWaiting) return
    const timer = setTimeout(() => {
      startTransition(() => {
        setShown(shown + 1)
      })
    })
    return () => {
      clearTimeout(timer)
    }
  }, [shown, isWaiting])
  return all.slice(0, shown)
}
