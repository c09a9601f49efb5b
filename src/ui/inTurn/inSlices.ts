/** So long the page's thread is kept at a time, ms: a frame of the screen is 16. */
const SLICE_MS = 8

/**
 * Runs a search to its end in slices that leave the page to the hand; null once `signal` is
 * aborted.
 */
export async function inSlices<S, R>(
  steps: Generator<S, R, void>,
  signal: AbortSignal,
  onStep?: (step: S) => void,
): Promise<R | null> {
  for (;;) {
    const until = performance.now() + SLICE_MS
    do {
      const step = steps.next()
      if (step.done === true) return step.value
      onStep?.(step.value)
    } while (performance.now() < until)
    await pause()
    if (signal.aborted) return null
  }
}

export function pause(): Promise<void> {
  return new Promise((go) => {
    setTimeout(go)
  })
}
