import type { FlightSetup } from '../../model/aircraft.ts'

/**
 * Gap between the tips of neighbouring propellers when the motors stand evenly on one circle, mm;
 * below zero they would strike each other. Null for fewer than two axes; a pair shares one.
 */
export function tipGapMm(
  setup: Pick<FlightSetup, 'motors' | 'motorRadiusMm' | 'propDiameterMm' | 'coaxial'>,
): number | null {
  const axes = setup.coaxial === true ? Math.ceil(setup.motors / 2) : setup.motors
  if (axes < 2) return null
  return 2 * setup.motorRadiusMm * Math.sin(Math.PI / axes) - setup.propDiameterMm
}
