import { RETRACT_BEYOND_MM } from '../../model/moves.ts'

/**
 * Lengths are told apart in steps of this ratio. A move's time is within a percent the same
 * anywhere in a step.
 */
const STEP = 1.15
const CLASSES = 80
/** One step ends where travels begin to draw the filament back: 0.02 mm and 31 steps. */
const LEAST_MM = RETRACT_BEYOND_MM / STEP ** 31
const PER_STEP = 1 / Math.log(STEP)

/**
 * Class of a length: ratio steps from 0.02 mm (class 0, and all below) to 1.2 m (the last, and all
 * above).
 */
export function lengthClass(mm: number): number {
  if (!(mm > LEAST_MM)) return 0
  return Math.min(CLASSES - 1, (Math.log(mm / LEAST_MM) * PER_STEP) | 0)
}

/** Weighted lengths by class. */
export interface LengthTally {
  readonly weight: Float64Array
  /** Σ weight × length. */
  readonly weightedMm: Float64Array
}

export function createTally(): LengthTally {
  return { weight: new Float64Array(CLASSES), weightedMm: new Float64Array(CLASSES) }
}

export function addLength(tally: LengthTally, mm: number, weight: number): void {
  const i = lengthClass(mm)
  tally.weight[i]! += weight
  tally.weightedMm[i]! += weight * mm
}

export function addTally(to: LengthTally, from: LengthTally, times: number): void {
  for (let i = 0; i < CLASSES; i++) {
    to.weight[i]! += from.weight[i]! * times
    to.weightedMm[i]! += from.weightedMm[i]! * times
  }
}

/** The classes in use: their mean lengths and weights. */
export function tallyTable(tally: LengthTally): { lengthMm: Float32Array; weight: Float32Array } {
  const lengthMm: number[] = []
  const weight: number[] = []
  for (let i = 0; i < CLASSES; i++) {
    if (tally.weight[i]! <= 0) continue
    lengthMm.push(tally.weightedMm[i]! / tally.weight[i]!)
    weight.push(tally.weight[i]!)
  }
  return { lengthMm: Float32Array.from(lengthMm), weight: Float32Array.from(weight) }
}
