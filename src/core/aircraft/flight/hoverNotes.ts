import type { FlightSetup } from '../../model/aircraft.ts'
import type { LearnedEfficiency } from './flown.ts'
import { MOST_NOMINAL_VOLTS } from './pack.ts'
import { tipGapMm } from './rotors.ts'

export type FlightNoteCode =
  | 'charged-voltage'
  | 'not-validated'
  | 'coaxial'
  | 'flown-far'
  | 'flown-other'
  | 'no-lift'
  | 'props-strike'
  | 'props-close'
  | 'deep-discharge'

/** Something to know about a hover figure. `code` is stable; `message` is not. */
export interface FlightNote {
  readonly code: FlightNoteCode
  readonly severity: 'note' | 'caution' | 'bad'
  readonly message: string
}

/**
 * Lee and Lee 2020 (Physics of Fluids, simulation): 7.9 % of thrust lost at a gap of 0.2 D, most of
 * it back by 0.75 D.
 */
const CLOSE_GAP_SHARE = 0.2
/** One maker lands with 15 % left, a student design note with 20 %. */
const MOST_USABLE = 0.9

export function hoverNotes(
  setup: FlightSetup,
  auwG: number,
  thrustToWeight: number,
  { validated, lesson }: Pick<LearnedEfficiency, 'validated' | 'lesson'>,
): readonly FlightNote[] {
  const notes: FlightNote[] = []
  const note = (code: FlightNoteCode, severity: FlightNote['severity'], message: string): void => {
    notes.push({ code, severity, message })
  }
  if (thrustToWeight < 1) {
    const thrustG = setup.motors * setup.motorThrustG
    note(
      'no-lift',
      'bad',
      `All motors together lift ${thrustG.toFixed(0)} g and the aircraft weighs ${auwG.toFixed(0)} g: ` +
        'it stays on the ground.',
    )
  }
  if (setup.coaxial === true && lesson?.verdict !== 'used') {
    note(
      'coaxial',
      'caution',
      'Propellers one above the other: the lower works in the wash of the upper, and no measured fit ' +
        'covers that. Power here is that of propellers side by side times 1.5 (1.15 to 2.1; ' +
        'the one measured pair took 2.0). Time a hover and type it here before you rely on it.',
    )
  } else if (!validated && lesson?.verdict !== 'used') {
    const each = auwG / setup.motors
    note(
      'not-validated',
      'caution',
      'No measured craft stands behind this hover: ' +
        `none has propellers of ${setup.propDiameterMm.toFixed(0)} mm with ` +
        `${each.toFixed(each < 20 ? 1 : 0)} g on each. The range is wider for it. ` +
        'Time a hover and type it here before you rely on it.',
    )
  }
  if (lesson?.verdict === 'far') {
    note(
      'flown-far',
      'caution',
      `The timed hover is left aside: it makes the drive ${lesson.factor.toFixed(2)} times as good as ` +
        'estimated, more than both errors explain. Look at the minutes, the share of the pack used, ' +
        'the pack’s capacity and cells, and the all-up weight it was flown at.',
    )
  }
  if (lesson?.verdict === 'other-propellers') {
    note(
      'flown-other',
      'note',
      'The timed hover is left aside: it was flown on another number or size of propellers.',
    )
  }
  if (setup.voltsPerCell > MOST_NOMINAL_VOLTS) {
    note(
      'charged-voltage',
      'caution',
      `${setup.voltsPerCell} V per cell looks like a charged voltage typed as nominal, ` +
        'and the hover time comes out too long. Type the nominal voltage: ' +
        '3.7 V for most lithium polymer packs.',
    )
  }
  if (setup.usableShare > MOST_USABLE) {
    note(
      'deep-discharge',
      'caution',
      `Flying ${(100 * setup.usableShare).toFixed(0)} % of the pack leaves no reserve to land with and ` +
        'wears the cells. 80 % is usual.',
    )
  }
  const gapMm = setup.motorRadiusMm > 0 ? tipGapMm(setup) : null
  if (gapMm !== null && gapMm <= 0) {
    note(
      'props-strike',
      'bad',
      `Neighbouring propellers of ${setup.propDiameterMm.toFixed(0)} mm overlap by ` +
        `${(-gapMm).toFixed(0)} mm on a motor circle of ${setup.motorRadiusMm.toFixed(0)} mm radius. ` +
        'Take smaller propellers or longer arms.',
    )
  } else if (gapMm !== null && gapMm < CLOSE_GAP_SHARE * setup.propDiameterMm) {
    note(
      'props-close',
      'note',
      `Propeller tips pass ${gapMm.toFixed(0)} mm apart, less than a fifth of their diameter: ` +
        'a simulation found about 8 % of the thrust lost there (Lee and Lee 2020).',
    )
  }
  return notes
}
