import { startTransition, useEffect, useRef, useState } from 'react'

/**
 * What a worker answers to the latest question; the answer before stays until then, and where the
 * answer is null. One question is out at a time: while it is, only the latest wish is kept.
 *
 * @param ask a new function is a new question.
 */
export function useAnswer<T>(ask: () => Promise<T | null>): T | null {
  const [answer, setAnswer] = useState<T | null>(null)
  const pending = useRef<(() => Promise<T | null>) | null>(null)
  const isBusy = useRef(false)
  const isLeft = useRef(false)

  useEffect(() => {
    isLeft.current = false
    return () => {
      isLeft.current = true
    }
  }, [])

  useEffect(() => {
    pending.current = ask
    if (!isBusy.current) void askNext()

    async function askNext(): Promise<void> {
      isBusy.current = true
      for (let next = pending.current; next !== null; next = pending.current) {
        pending.current = null
        const found = await next()
        if (isLeft.current) break
        if (found === null) continue
        startTransition(() => {
          setAnswer(found)
        })
      }
      isBusy.current = false
    }
  }, [ask])
  return answer
}
