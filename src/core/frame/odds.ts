import { chanceBelow, rangeOf } from '../doubt/bell.ts'
import { blameFor } from '../doubt/blame.ts'
import { bestNext } from '../doubt/next.ts'
import type { Range } from '../model/figures.ts'
import type { FrameDoubt } from './frameDoubt.ts'
import { measurable } from './measurements.ts'

export type Verdict = 'below' | 'above' | 'too close to say'

/** One source of doubt: a shared error, or what belongs to a line alone. */
export interface DoubtSource {
  /** Of the shared error or the line. */
  readonly id: string
  readonly name: string
  readonly kind: 'shared' | 'own'
  /** One standard deviation of the total from this source alone. g */
  readonly sigmaG: number
  /**
   * Of the total's variance; all sources sum to 1. Below zero where a weighing has tied the source
   * to another that outweighs it.
   */
  readonly share: number
}

/** What measuring one thing would do. */
export interface Measurement {
  /** Of the shared error or the line. */
  readonly id: string
  /** An instruction: "Weigh one “Arm”". */
  readonly text: string
  /** Standard deviation of the total afterwards. g */
  readonly sigmaAfterG: number
  /** Share of the variance it would take away, 0–1. */
  readonly gain: number
}

export interface MassOdds {
  readonly thresholdG: number
  /** Chance to end strictly below the threshold, 0–1. */
  readonly chanceBelow: number
  readonly verdict: Verdict
  /** The lines' middle masses summed. */
  readonly midG: number
  /** What is to be expected: the same, since no error here leans to one side. */
  readonly meanG: number
  readonly sigmaG: number
  /** Holds 95 % of cases. */
  readonly rangeG: Range
  /** The largest first; empty when nothing is in doubt. */
  readonly sources: readonly DoubtSource[]
  /** The most useful first; only those that help. */
  readonly measurements: readonly Measurement[]
}

/** Nobody is told yes or no this near to a line: scales, glue and law books are not that exact. */
const TOO_CLOSE_SHARE = 0.03
/** Chance from which on a yes or no is given (common practice, no source). */
const SURE = 0.95

/**
 * The chance that all that flies ends below a threshold (g), who is to blame for the doubt, and
 * what to measure next, from the frame's one model of errors.
 */
export function massOdds(doubt: FrameDoubt, thresholdG: number): MassOdds {
  const { allUp, allUpBell, known, names } = doubt
  const chance = chanceBelow(allUpBell, thresholdG)
  return {
    thresholdG,
    chanceBelow: chance,
    verdict: verdictOf(chance, allUpBell.mean, thresholdG),
    midG: allUpBell.mean,
    meanG: allUpBell.mean,
    sigmaG: allUpBell.sigma,
    rangeG: rangeOf(allUpBell),
    sources: blameFor(allUp, known.belief).map(({ id, kind, sigma, share }) => ({
      id,
      name: names.get(id) ?? id,
      kind,
      sigmaG: sigma,
      share,
    })),
    measurements: bestNext(allUp, known.belief, measurable(doubt)).map(
      ({ id, text, sigmaAfter, gain }) => ({ id, text, sigmaAfterG: sigmaAfter, gain }),
    ),
  }
}

/** Whether a mass lies so near a threshold that nobody may be told yes or no. */
export function isTooClose(massG: number, thresholdG: number): boolean {
  return Math.abs(massG - thresholdG) <= TOO_CLOSE_SHARE * thresholdG
}

function verdictOf(chance: number, massG: number, thresholdG: number): Verdict {
  if (isTooClose(massG, thresholdG)) return 'too close to say'
  if (chance >= SURE) return 'below'
  return chance <= 1 - SURE ? 'above' : 'too close to say'
}
