import type { FlightSetup } from '../../model/aircraft.ts'
import type { Severity } from '../../model/mesh.ts'
import { MOST_NOMINAL_VOLTS } from './pack.ts'
import { tipGapMm } from './rotors.ts'

export type FlightNoteCode =
  | 'charged-voltage'
  | 'not-validated'
  | 'no-lift'
  | 'props-strike'
  | 'props-close'
  | 'deep-discharge'

/** Something to know about a hover figure. `code` is stable; `message` is not. */
export interface FlightNote {
  readonly code: FlightNoteCode
  readonly severity: Severity
  readonly message: string
}

/** Lee and Lee 2020 (Physics of Fluids, simulation): 7.9 % of thrust lost at a gap of 0.2 D, most of it back by 0.75 D. */
const CLOSE_GAP_SHARE = 0.2
/** One maker lands with 15 % left, a student design note with 20 %. */
const MOST_USABLE = 0.9

export function hoverNotes(
  setup: FlightSetup,
  auwG: number,
  thrustToWeight: number,
  validated: boolean,
): readonly FlightNote[] {
  const notes: FlightNote[] = []
  const note = (code: FlightNoteCode, severity: Severity, message: string): void => {
    notes.push({ code, severity, message })
  }
  if (thrustToWeight < 1) {
    const thrustG = setup.motors * setup.motorThrustG
    note(
      'no-lift',
      'bad',
      `All motors together lift ${thrustG.toFixed(0)} g and the aircraft weighs ${auwG.toFixed(0)} g: it stays on the ground.`,
    )
  }
  if (!validated) {
    note(
      'not-validated',
      'caution',
      `The hover figures are not validated below 100 g, and this aircraft weighs ${auwG.toFixed(0)} g: small propellers waste more, brushed motors most. Time a hover before you rely on them.`,
    )
  }
  if (setup.voltsPerCell > MOST_NOMINAL_VOLTS) {
    note(
      'charged-voltage',
      'caution',
      `${setup.voltsPerCell} V per cell looks like a charged voltage typed as nominal, and the hover time comes out too long. Type the nominal voltage: 3.7 V for most lithium polymer packs.`,
    )
  }
  if (setup.usableShare > MOST_USABLE) {
    note(
      'deep-discharge',
      'caution',
      `Flying ${(100 * setup.usableShare).toFixed(0)} % of the pack leaves no reserve to land with and wears the cells. 80 % is usual.`,
    )
  }
  const gapMm = setup.motorRadiusMm > 0 ? tipGapMm(setup) : null
  if (gapMm !== null && gapMm <= 0) {
    note(
      'props-strike',
      'bad',
      `Neighbouring propellers of ${setup.propDiameterMm.toFixed(0)} mm overlap by ${(-gapMm).toFixed(0)} mm on a motor circle of ${setup.motorRadiusMm.toFixed(0)} mm radius. Take smaller propellers or longer arms.`,
    )
  } else if (gapMm !== null && gapMm < CLOSE_GAP_SHARE * setup.propDiameterMm) {
    note(
      'props-close',
      'note',
      `Propeller tips pass ${gapMm.toFixed(0)} mm apart, less than a fifth of their diameter: a simulation found about 8 % of the thrust lost there (Lee and Lee 2020).`,
    )
  }
  return notes
}
