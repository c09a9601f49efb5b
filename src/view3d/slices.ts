/** Longest stretch of work before the page may answer input again, ms. Long tasks begin at 50. */
const SLICE_MS = 8

/**
 * Runs a generator to its end in slices, letting the page breathe between them.
 * The generator yields often (about every millisecond of work).
 *
 * @returns its result, or null as soon as `wanted` turns false.
 */
export async function runInSlices<T>(
  work: Generator<void, T>,
  wanted: () => boolean,
): Promise<T | null> {
  for (;;) {
    const end = performance.now() + SLICE_MS
    do {
      const step = work.next()
      if (step.done === true) return wanted() ? step.value : null
    } while (performance.now() < end)
    await breathe()
    if (!wanted()) return null
  }
}

export function breathe(): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, 0))
}
