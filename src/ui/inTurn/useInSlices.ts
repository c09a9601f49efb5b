import { startTransition, useContext, useEffect, useState } from 'react'
import { inSlices } from './inSlices.ts'
import { StillDrawing } from './stillDrawing.ts'

/**
 * What a long sum on the page's own thread comes to, reckoned in slices that leave the page to the
 * hand; the answer before stays until then.
 *
 * @param begin a new function is a new question.
 * @returns null before the first answer.
 */
export function useInSlices<T>(begin: () => Generator<void, T, void>): T | null {
  const [answer, setAnswer] = useState<{ readonly of: unknown; readonly is: T } | null>(null)
  const isWaiting = answer?.of !== begin
  const beginDrawing = useContext(StillDrawing)
  useEffect(() => (isWaiting ? beginDrawing?.() : undefined), [isWaiting, beginDrawing])
  useEffect(() => {
    const abort = new AbortController()
    void inSlices(begin(), abort.signal).then((found) => {
      if (found === null || abort.signal.aborted) return
      startTransition(() => {
        setAnswer({ of: begin, is: found })
      })
    })
    return () => {
      abort.abort()
    }
  }, [begin])
  return answer?.is ?? null
}
