import type { Foretold, Observation } from './belief.ts'
import { foretellEach } from './belief.ts'

/**
 * Deviations from which on a reading is asked about instead of believed (common practice, no
 * source).
 */
export const STRAY_OFF = 3.5

/**
 * Readings that all the others, and what was known before, make all but impossible: the furthest
 * off first, then again among the rest until none is left, so that one bad reading cannot hide
 * another nor make good ones look bad. A reading the user stands by (`trusted`) is never called a
 * stray.
 */
export function findStrays(
  observations: readonly Observation[],
  trusted: ReadonlySet<string> = new Set(),
): readonly Foretold[] {
  const strays: Foretold[] = []
  let rest = observations
  for (;;) {
    const furthest = foretellEach(rest)
      .filter(({ id }) => !trusted.has(id))
      .reduce<Foretold | null>(
        (most, one) => (most !== null && Math.abs(most.off) >= Math.abs(one.off) ? most : one),
        null,
      )
    if (furthest === null || Math.abs(furthest.off) <= STRAY_OFF) return strays
    strays.push(furthest)
    rest = rest.filter(({ id }) => id !== furthest.id)
  }
}
