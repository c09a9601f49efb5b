/** Runs a search to its end, telling each step. */
export function runToEnd<S, R>(steps: Generator<S, R, void>, onStep?: (step: S) => void): R {
  for (;;) {
    const step = steps.next()
    if (step.done === true) return step.value
    onStep?.(step.value)
  }
}
