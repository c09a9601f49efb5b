import { HOLE_LOSS_MM, HOLE_READING_MM, HOLE_SCATTER_MM, PIN_STEP_MM } from '../data/drills.ts'
import { COVERAGE } from '../doubt/bell.ts'
import { believe, type Belief } from '../doubt/belief.ts'
import { errorId } from '../doubt/errorId.ts'
import { formOf, type Form } from '../doubt/form.ts'
import type { Lies } from '../mesh/holes/numberHoles.ts'
import type { HoleReading } from '../model/drill.ts'
import type { Material, Range } from '../model/figures.ts'

/**
 * How much of the doubt of any hole is the bead's, which all directions share. mm, one deviation
 */
const BEAD_MM = 0.04

/** What is known of how much holes of one plastic on one printer lose. */
export interface HoleLoss {
  /** mm on the diameter, for the next hole drawn. */
  readonly of: (lies: Lies) => Range
  /** How many readings taught it. */
  readonly from: number
}

/**
 * How much narrower holes come out than their shrunk flats, after what pins and callipers said of
 * holes of this plastic on this printer. A loss is a usual one, an error of the bead that all
 * directions share, one of the direction, and each hole's own.
 */
export function holeLoss(
  { id, shrinkagePct }: Pick<Material, 'id' | 'shrinkagePct'>,
  printerId: string,
  readings: readonly HoleReading[],
): HoleLoss {
  const own = readings.filter((one) => one.printerId === printerId && one.materialId === id)
  const belief = believe(
    own.map((one) => ({
      id: one.id,
      form: lossForm(printerId, id, one.lies),
      value: shrunkMm(one.drawnMm, shrinkagePct.value) - readMm(one),
      noise: Math.hypot(HOLE_READING_MM, HOLE_SCATTER_MM),
    })),
  )
  return { of: (lies) => rangeOfLoss(belief, lossForm(printerId, id, lies)), from: own.length }
}

/** A flat-to-flat distance once plastic has shrunk. mm */
export function shrunkMm(clearMm: number, shrinkagePct: number): number {
  return clearMm * (1 - shrinkagePct / 100)
}

function readMm({ measuredMm, by }: HoleReading): number {
  return by === 'pin' ? measuredMm + PIN_STEP_MM / 2 : measuredMm
}

function lossForm(printerId: string, materialId: string, lies: Lies): Form {
  const { low, mid, high } = HOLE_LOSS_MM[lies]
  const sigma = (high - low) / 2 / COVERAGE
  const own = Math.sqrt(Math.max(0, sigma ** 2 - BEAD_MM ** 2 - HOLE_SCATTER_MM ** 2))
  return formOf(mid, [
    [errorId('hole', printerId, materialId), BEAD_MM],
    [errorId(`${lies} hole`, printerId, materialId), own],
  ])
}

function rangeOfLoss(belief: Belief, form: Form): Range {
  const { mean, sigma } = belief.of(form)
  const reach = COVERAGE * Math.hypot(sigma, HOLE_SCATTER_MM)
  return { low: mean - reach, mid: mean, high: mean + reach }
}
