import type { Blades } from '../../model/aircraft.ts'
import type { Range } from '../../model/figures.ts'

/** Of a propeller of which nobody said. */
export const BLADES_DEFAULT: Blades = 2

/**
 * Static thrust coefficient by number of blades.
 *
 * - Two: 0.099–0.130, 10 and 11 inch (Brandt and Selig, AIAA 2011-1255, UIUC Propeller Data Site
 *   vol. 1); the middle is the 10 inch sweep's.
 * - Three: 5 inch, 0.108–0.180 (static averages of the same site) and 0.144–0.188 (public test
 *   note, seven runs). The middle is that note's at light load, 0.144–0.152, where one hovers.
 * - Four: as two to three blades went, by blades^0.55 (ours; no source).
 */
export const THRUST_COEFFICIENT: Readonly<Record<Blades, Range>> = {
  2: { low: 0.1, mid: 0.12, high: 0.14 },
  3: { low: 0.108, mid: 0.15, high: 0.19 },
  4: { low: 0.125, mid: 0.175, high: 0.225 },
}
