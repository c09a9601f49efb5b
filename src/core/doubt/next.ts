import type { Belief } from './belief.ts'
import type { Form } from './form.ts'

/** A reading that could be made. */
export interface Candidate {
  readonly id: string
  /** An instruction: "Weigh one “Arm”". */
  readonly text: string
  readonly form: Form
  /** Of the reading, in the form's unit; above 0. */
  readonly noise: number
}

/** What a reading would do to a quantity's doubt. */
export interface Gain {
  readonly id: string
  readonly text: string
  /** Of the quantity, one standard deviation afterwards. */
  readonly sigmaAfter: number
  /** Share of the variance it would take away, 0–1. */
  readonly gain: number
}

/** Below this a measurement is not worth naming. */
const NOTHING = 1e-9

/**
 * What each possible reading would take off a quantity's doubt, the most useful first. Exact: the
 * doubt left does not depend on what will be read.
 */
export function bestNext(
  form: Form,
  belief: Belief,
  candidates: readonly Candidate[],
): readonly Gain[] {
  const variance = belief.of(form).sigma ** 2
  if (!(variance > 0)) return []
  return candidates
    .map(({ id, text, form: read, noise }) => {
      const readVariance = belief.of(read).sigma ** 2 + noise ** 2
      const gain = Math.min(1, belief.covariance(form, read) ** 2 / readVariance / variance)
      return { id, text, gain, sigmaAfter: Math.sqrt(variance * (1 - gain)) }
    })
    .filter(({ gain }) => gain > NOTHING)
    .toSorted((a, b) => b.gain - a.gain)
}
