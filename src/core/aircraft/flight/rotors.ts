import type { FlightSetup } from '../../model/aircraft.ts'

/**
 * Gap between the tips of neighbouring propellers when the motors stand evenly on one circle, mm; below zero they would
 * strike each other. Null for fewer than two motors.
 */
export function tipGapMm(
  setup: Pick<FlightSetup, 'motors' | 'motorRadiusMm' | 'propDiameterMm'>,
): number | null {
  if (setup.motors < 2) return null
  return 2 * setup.motorRadiusMm * Math.sin(Math.PI / setup.motors) - setup.propDiameterMm
}
