import type { FlightSetup } from '../../src/core/model/aircraft.ts'
import type { HoverFigures } from '../../src/core/aircraft/flight/hover.ts'
import { hoverFigures } from '../../src/core/aircraft/flight/hover.ts'

/** A strong four-motor setup to change one number of; invented. */
export const QUAD: FlightSetup = {
  motors: 4,
  motorThrustG: 5000,
  propDiameterMm: 254,
  packCells: 4,
  packMah: 5000,
  voltsPerCell: 3.7,
  usableShare: 0.8,
  avionicsW: 5,
  motorRadiusMm: 250,
}

export function hoverOf(changes: Partial<FlightSetup>, auwG: number): HoverFigures {
  const figures = hoverFigures({ ...QUAD, ...changes }, auwG)
  if (!figures) throw new Error('the setup was taken for incomplete')
  return figures
}
