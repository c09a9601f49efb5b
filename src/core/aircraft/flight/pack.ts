import type { FlightSetup } from '../../model/aircraft.ts'

/**
 * A lithium cell reads 3.6 to 3.85 V nominal and 4.2 V or more only when full: above this a charged
 * voltage was typed.
 */
export const MOST_NOMINAL_VOLTS = 4

/** Energy of a full pack at its nominal voltage, Wh: Ah × V per cell × cells. */
export function packEnergyWh(
  setup: Pick<FlightSetup, 'packCells' | 'packMah' | 'voltsPerCell'>,
): number {
  return (setup.packMah / 1000) * setup.voltsPerCell * setup.packCells
}
