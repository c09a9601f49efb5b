/** The stretch of the gram scale that is shown, g. */
export interface RulerWindow {
  readonly lowG: number
  readonly highG: number
  /** From one numbered tick to the next. */
  readonly majorG: number
}

/** Of a frame without mass: a bare ruler. */
const AT_REST: RulerWindow = { lowG: 0, highG: 200, majorG: 20 }

/**
 * The window that holds every mark with room on both sides: 120 to 170 g for marks from 136 to 158,
 * so that a gram can be seen. It begins at 0 when the marks lie so near to it that a break would
 * save nothing.
 *
 * @param marksG everything that is marked: ends of the band, limit, carbon, changes looked at.
 */
export function rulerWindow(marksG: readonly number[]): RulerWindow {
  const least = Math.min(...marksG)
  const most = Math.max(...marksG)
  if (!(most > 0)) return AT_REST
  const majorG = niceStep(Math.max((most - least) / 3, most / 40))
  const lowG = Math.max(0, Math.floor(least / majorG) * majorG - majorG)
  const highG = Math.ceil(most / majorG) * majorG + majorG
  if (lowG > 2 * majorG) return { lowG, highG, majorG }
  // Twenties from 0 do not end at 150: the last number has to stand at its own place.
  const stepG = niceStep(highG / 8)
  return { lowG: 0, highG: Math.ceil(highG / stepG - 1e-9) * stepG, majorG: stepG }
}

/** The next of 1, 2, 5, 10 … at or above a step. */
function niceStep(step: number): number {
  const power = 10 ** Math.floor(Math.log10(step))
  const lead = step / power
  return (lead <= 1 ? 1 : lead <= 2 ? 2 : lead <= 5 ? 5 : 10) * power
}
