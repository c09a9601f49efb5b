import type { Aircraft } from '../../model/aircraft.ts'
import { aboveTurnsHz, hoverTurnHz } from '../twin/armShake.ts'
import { hoveringSetup } from './hoveringSetup.ts'

/**
 * The least first tone, Hz, of an arm that is clear of its propeller's turns in hover; null while
 * nothing hovers, or mass or propeller is not known.
 */
export function clearOfTurnsHz(aircraft: Aircraft, auwG: number): number | null {
  const flight = hoveringSetup(aircraft)
  if (flight === null || !(flight.propDiameterMm > 0) || !(auwG > 0)) return null
  const { motors, propDiameterMm, blades } = flight
  return aboveTurnsHz(hoverTurnHz(auwG / motors, propDiameterMm, blades))
}
