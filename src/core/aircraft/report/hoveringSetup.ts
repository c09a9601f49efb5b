import type { Aircraft, FlightSetup } from '../../model/aircraft.ts'

/**
 * What it hovers with; null for a plane, which hangs on its wing: no hover, and its motors stand on
 * no circle.
 */
export function hoveringSetup({ wing, flight }: Aircraft): FlightSetup | null {
  return wing === null ? flight : null
}
