/** So often the yardstick is laid on, ms; it costs a fiftieth of the time. */
const EVERY_MS = 100
/** Steps of the yardstick: about two milliseconds of one core today. */
const STEPS = 600_000

/**
 * The quickest that the yardstick ever went in this thread, by each clock: with a core to itself.
 * ms
 */
const quickestMs = new WeakMap<() => number, number>()

/**
 * Tells how long a thread has worked, not how long it has waited for a core. Browsers and Node tell
 * a thread no processor time of its own, so a fixed piece of work is timed now and then: where it
 * takes twice as long as it ever did, half of the time went to others. Against the processor time
 * of a process of its own, beside six that never rest on two cores, see DEVELOPERS.md.
 *
 * @param now ms, of a clock on the wall; the same one each time, whose quickest yardstick is kept.
 * @param work the yardstick.
 * @returns seconds of work since this call.
 */
export function createWorkClock(now: () => number, work: () => void = toil): () => number {
  let measures = 0
  let measuredMs = 0
  const measure = (): void => {
    const from = now()
    work()
    const tookMs = now() - from
    if (!(tookMs > 0)) return
    quickestMs.set(now, Math.min(quickestMs.get(now) ?? Infinity, tookMs))
    measures += 1
    measuredMs += tookMs
  }
  measure()
  const beganAt = now()
  let askedAt = beganAt
  return () => {
    const at = now()
    if (at - askedAt >= EVERY_MS) {
      measure()
      askedAt = now()
    }
    // All measures together: one alone either meets another thread or does not.
    const slowness = measures > 0 ? measuredMs / (measures * (quickestMs.get(now) ?? 1)) : 1
    return (now() - beganAt) / slowness / 1000
  }
}

function toil(): void {
  let sum = 0
  for (let i = 0; i < STEPS; i++) sum = Math.sqrt(sum + i)
  // A sum that nobody reads might never be made.
  if (sum < 0) throw new Error('Roots are not negative.')
}
