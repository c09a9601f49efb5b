import type { FigureDoubt, SharedError } from '../model/doubt.ts'
import type { Material, Printer } from '../model/figures.ts'
import { errorId } from './errorId.ts'
import { formOf, type Form } from './form.ts'

/**
 * How far an error reaches below and above the middle, as shares ≥ 0; taken to hold 95 % of
 * cases.
 */
export interface Reach {
  readonly low: number
  readonly high: number
}

/**
 * The same filament of other makers: plain PLA alone runs from 1.17 to 1.32 g/cm³ over their data
 * sheets.
 */
const DENSITY_FLOOR = 0.06
/** A spool's own density, typed by the user. */
const DENSITY_TYPED = 0.01
/**
 * 1.75 ± 0.02 mm, the tolerance suppliers state (W. J. Main, MSc thesis, Univ. Oklahoma 2025):
 * 2.3 % of mass.
 */
const DIAMETER = 0.023
/**
 * Packing: how much of what is counted as solid is plastic. It lies between two bounds: lines
 * that fill their rectangle, 1 (V. E. Kuznetsov et al., Polymers 2018, 10(3), 313, doi
 * 10.3390/polym10030313, table 1, for twenty nozzles and layers), and lines with round ends at
 * the same spacing, (w − h)·h + π·h²/4: 0.893 of it at 0.4 × 0.2 mm; their middle is 0.946. Solid
 * parts of an open data set (Open Dynamic Robot Initiative, open_robot_actuator_hardware, commit
 * 66af1522, BSD-3-Clause; PC-ABS at the data sheet's 1.10 g/cm³) weigh 0.86 to 1.00 of their
 * volume. Every second of its sixteen rows shaped the middle and the reach here (mean 0.932,
 * deviation 0.042, of which 0.02 is the scale's whole gram); the other eight are the check.
 */
export const PACKING_MID = 0.94
const PACKING = 0.065
/**
 * Flow: plastic pushed over plastic asked for. One builder's own settings for PETG run from 0.96
 * to 0.98 (libdrone); a feeder set by hand is good for as much either way (common practice, no
 * source).
 */
const FLOW = 0.03
/**
 * Support: how much of its column is plastic, half to twice what is assumed (common practice, no
 * source).
 */
const SUPPORT: Reach = { low: 0.5, high: 1 }
/**
 * Ends of infill lines joined along the wall: not at all, or along a good half of it, where two
 * fifths are assumed (common practice, no source; 4 to 14 % of weighed sparse blocks lay in them,
 * P. Ravi 2020, doi 10.1186/s41205-020-00063-8).
 */
const ENDS: Reach = { low: 1, high: 0.25 }
/**
 * Hours. Published build-time models with fitted motion come within 8.5 % (G. Medina-Sanchez et
 * al., Materials 2019, 12(23), 3982, doi 10.3390/ma12233982); one that knows the machine only by
 * its class should not claim better than 15 %, and some 25 % where segments are short, which its
 * acceleration decides. Most of that is the machine's, for all its prints
 * alike: with this split two timed prints of different parts leave 8.4 %.
 */
const HOURS = 0.15
const HOURS_TIMED = 0.085
const HOURS_OWN = 0.07
/**
 * Lines of the first layer, pressed into a bed set too near or too far (common practice, no
 * source).
 */
const FIRST_LAYER = 0.15

/**
 * One standard deviation of an error that may be lopsided: its mean square about the middle is
 * that of a bell made of two halves (S. John, Commun. Stat. Theory Methods 11(8), 1982, 879–885,
 * doi 10.1080/03610928208828279).
 */
export function deviationOf({ low, high }: Reach): number {
  const [below, above] = [low / 2, high / 2]
  return Math.sqrt(below ** 2 - below * above + above ** 2)
}

/** Every part of a frame asks for them at each step of a slider. */
const ofSpools = new WeakMap<Material, readonly SharedError[]>()

/** What is unsure of a spool: how dense and how thick its filament is. */
export function spoolErrors(material: Material): readonly SharedError[] {
  const made = ofSpools.get(material) ?? makeSpoolErrors(material)
  ofSpools.set(material, made)
  return made
}

function makeSpoolErrors(material: Material): readonly SharedError[] {
  const { id, name } = material
  return [
    {
      id: densityId(id),
      name: `Density of ${name}`,
      effect: deviationOf(densityReach(material)),
    },
    { id: errorId('diameter', id), name: `Filament diameter of ${name}`, effect: DIAMETER / 2 },
  ]
}

/**
 * What is unsure of a plastic on a printer: how tight its lines lie, for the `packed` share of a
 * part, and how it flows.
 */
export function layingErrors(
  printerId: string,
  { id, name }: Pick<Material, 'id' | 'name'>,
  packed: number,
): readonly SharedError[] {
  const packing = errorId('packing', printerId, id)
  return [
    { id: packing, name: `Packing of ${name}`, effect: (packed * PACKING) / 2 },
    { id: errorId('flow', printerId, id), name: `Flow of ${name}`, effect: FLOW / 2 },
  ]
}

/**
 * Errors of grams and not of metres: of how much a metre of filament weighs, and of how much of what
 * a printer is told to fill ends up full.
 */
const NOT_OF_LENGTH = ['density:', 'diameter:', 'packing:']

/** Whether an error changes how many metres are pushed. */
export function changesLength({ id }: SharedError): boolean {
  return !NOT_OF_LENGTH.some((kind) => id.startsWith(kind))
}

/** Errors that no file of moves can show, flow with them: it may be the feeder's. */
const BEYOND_MOVES = [...NOT_OF_LENGTH, 'flow:']

/** Whether an error changes the plastic that a printer's file asks for. */
export function showsInMoves({ id }: SharedError): boolean {
  return !BEYOND_MOVES.some((kind) => id.startsWith(kind))
}

/** What is unsure of a printer's first layer, for a part that has `share` of its plastic there. */
export function firstLayerError(printerId: string, share: number): SharedError {
  return { id: errorId('first', printerId), name: 'First layer', effect: (share * FIRST_LAYER) / 2 }
}

function densityId(materialId: string): string {
  return errorId('density', materialId)
}

/**
 * What is unsure of the turns at the ends of infill lines, for a part that has `share` of its
 * plastic there.
 */
export function endsError(printerId: string, share: number): SharedError {
  return {
    id: errorId('ends', printerId),
    name: 'Joined line ends',
    effect: share * deviationOf(ENDS),
  }
}

/** What is unsure of a printer's supports, for a print that has `share` of its plastic there. */
export function supportError(printerId: string, share: number): SharedError {
  return {
    id: errorId('support', printerId),
    name: 'Support',
    effect: share * deviationOf(SUPPORT),
  }
}

/**
 * What is unsure of hours: the pace of the printer, how fast it gets up to speed, and the print's
 * own. `longer` is what a print takes more, as a share, with the least acceleration to expect.
 */
export function clockDoubt(
  { id, clockFactor }: Pick<Printer, 'id' | 'clockFactor'>,
  longer: number,
): FigureDoubt {
  const whole = clockFactor === null ? HOURS : HOURS_TIMED
  const pace = Math.sqrt(whole ** 2 - HOURS_OWN ** 2) / 2
  const ramps = clockFactor === null ? longer / 2 : 0
  return {
    shared: [
      { id: errorId('pace', id), name: 'Pace of the printer', effect: pace },
      { id: errorId('acceleration', id), name: 'Acceleration of the printer', effect: ramps },
    ],
    own: HOURS_OWN / 2,
  }
}

/**
 * The doubt of hours that were reckoned for one printer, of the same print on another: how far its
 * ramps reach is taken over, how well its pace is known is its own.
 */
export function onPrinter(
  { shared, own }: FigureDoubt,
  from: Pick<Printer, 'id'>,
  to: Pick<Printer, 'id' | 'clockFactor'>,
): FigureDoubt {
  const [fromPace, fromRamps] = [errorId('pace', from.id), errorId('acceleration', from.id)]
  const ramps = shared.find(({ id }) => id === fromRamps)?.effect ?? 0
  const rest = shared.filter(({ id }) => id !== fromPace && id !== fromRamps)
  return { shared: [...clockDoubt(to, 2 * ramps).shared, ...rest], own }
}

/** How `errorId` begins what is unsure of a clock; the printer's id follows. */
const PACE = 'pace:'
const RAMPS = 'acceleration:'

/** Ids of the printers whose clocks errors are of. */
export function clocksIn(errorIds: readonly string[]): readonly string[] {
  return errorIds.flatMap((id) => (id.startsWith(PACE) ? [id.slice(PACE.length)] : []))
}

/** Hours with what is unsure of one printer's clock in place of any other's. */
export function onClockOf({ mid, ids, effects }: Form, printerId: string): Form {
  const [pace, ramps] = [errorId('pace', printerId), errorId('acceleration', printerId)]
  const named = ids.map((id, i) => {
    const own = id.startsWith(PACE) ? pace : id.startsWith(RAMPS) ? ramps : id
    return [own, effects[i] ?? 0] as const
  })
  return formOf(mid, named)
}

/** How far the spool's density may lie from the one in the table. */
function densityReach(material: Material): Reach {
  if (material.densityTyped) return { low: DENSITY_TYPED, high: DENSITY_TYPED }
  const { value } = material.densityGCm3
  const [low, high] = material.densityRangeGCm3
  return {
    low: Math.max(DENSITY_FLOOR, 1 - low / value),
    high: Math.max(DENSITY_FLOOR, high / value - 1),
  }
}

/**
 * Typing the density of a spool as a reading of its error: how much it leaves unsure, in deviations
 * of what was unsure before. Null where it is typed.
 */
export function densityReading(material: Material): { id: string; noise: number } | null {
  if (material.densityTyped) return null
  const left = DENSITY_TYPED / 2 / deviationOf(densityReach(material))
  return { id: densityId(material.id), noise: left / Math.sqrt(1 - left ** 2) }
}
