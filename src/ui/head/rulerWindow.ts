/** The stretch of the scale that is shown, in the unit of its numbers. */
export interface RulerWindow {
  readonly low: number
  readonly high: number
  /** From one numbered tick to the next. */
  readonly major: number
}

/** Of a frame without mass: a bare ruler. */
export const GRAMS_AT_REST: RulerWindow = { low: 0, high: 200, major: 20 }
export const OUNCES_AT_REST: RulerWindow = { low: 0, high: 8, major: 1 }

/**
 * The window that holds every mark with room on both sides: 120 to 170 g for marks from 136 to 158,
 * so that a gram can be seen. It begins at 0 when the marks lie so near to it that a break would
 * save nothing.
 *
 * @param marks everything that is marked: ends of the band, limit, carbon, changes looked at.
 * @param atRest what is shown of a frame without mass.
 */
export function rulerWindow(
  marks: readonly number[],
  atRest: RulerWindow = GRAMS_AT_REST,
): RulerWindow {
  const least = Math.min(...marks)
  const most = Math.max(...marks)
  if (!(most > 0)) return atRest
  const major = niceStep(Math.max((most - least) / 3, most / 40))
  const low = Math.max(0, Math.floor(least / major) * major - major)
  const high = Math.ceil(most / major) * major + major
  if (low > 2 * major) return { low, high, major }
  // Twenties from 0 do not end at 150: the last number has to stand at its own place.
  const step = niceStep(high / 8)
  return { low: 0, high: Math.ceil(high / step - 1e-9) * step, major: step }
}

/** The next of 1, 2, 5, 10 … at or above a step. */
function niceStep(step: number): number {
  const power = 10 ** Math.floor(Math.log10(step))
  const lead = step / power
  return (lead <= 1 ? 1 : lead <= 2 ? 2 : lead <= 5 ? 5 : 10) * power
}
