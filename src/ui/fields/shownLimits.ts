import type { Limits } from '../../core/data/limits.ts'
import type { ShownAs } from '../../core/words/shownUnits.ts'
import type { Bounds } from './numberWords.ts'

/**
 * Digits of a limit in another unit, and decimals: enough, and few enough to be written out and
 * typed.
 */
const DIGITS = 6
const FINEST = 1e-6

/**
 * Limits in the unit that is shown, rounded inwards: what is told as the least and the most is
 * taken, and is within the limits that hold. A whole number of millimetres is no whole number of
 * inches.
 */
export function shownLimits(limits: Limits, as: ShownAs): Required<Omit<Bounds, 'unit'>> {
  if (as.per === 1) return limits
  return {
    min: inwards(limits.min / as.per, Math.ceil),
    max: inwards(limits.max / as.per, Math.floor),
    whole: false,
  }
}

function inwards(value: number, round: (value: number) => number): number {
  if (value === 0 || !Number.isFinite(value)) return value
  const unit = Math.max(FINEST, 10 ** (Math.floor(Math.log10(Math.abs(value))) - DIGITS + 1))
  // Twice: 1 / 25.4 * 25.4 may lie a hair beside 1.
  const steps = Number((value / unit).toPrecision(12))
  return Number((round(steps) * unit).toPrecision(DIGITS))
}

/**
 * What an arrow key adds: the nearest of 1, 2, 5, 10 … to the same step in the unit that is kept.
 */
export function shownStep(step: number, as: ShownAs): number {
  if (as.per === 1) return step
  const wanted = Math.log10(step / as.per)
  const power = Math.floor(wanted)
  const lead = 10 ** (wanted - power)
  const nice = lead < Math.SQRT2 ? 1 : lead < Math.sqrt(10) ? 2 : lead < Math.sqrt(50) ? 5 : 10
  return Number((nice * 10 ** power).toPrecision(3))
}
