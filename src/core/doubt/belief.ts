import { backwards, dot, factorise, forwards } from './cholesky.ts'
import type { Form } from './form.ts'
import { covarianceOf } from './form.ts'

/** Something read off a scale or a clock. */
export interface Observation {
  readonly id: string
  /** What should have been read, with every error that it shares with other quantities. */
  readonly form: Form
  readonly value: number
  /** Standard deviation of the reading itself; above 0. */
  readonly noise: number
}

/** A quantity as it is believed: a normal bell. */
export interface Bell {
  readonly mean: number
  readonly sigma: number
  /** What it is sure to reach; see `Form`. */
  readonly least?: number
}

/** What is known once the observations were heard. */
export interface Belief {
  readonly of: (form: Form) => Bell
  readonly covariance: (a: Form, b: Form) => number
}

/**
 * What all quantities are once these were observed. Exact: quantities and readings are sums of
 * independent normal errors, so they are jointly normal, and conditioning one on others is linear
 * algebra (C. E. Rasmussen, C. K. I. Williams, Gaussian Processes for Machine Learning, 2006,
 * A.6). Costs the cube of the number of observations, whatever the number of errors.
 */
export function believe(observations: readonly Observation[]): Belief {
  if (observations.length === 0) return UNOBSERVED
  const lower = factorReadings(observations)
  const misses = forwards(
    lower,
    observations.map(({ value, form }) => value - form.mid),
  )
  const seen = (form: Form): Float64Array =>
    forwards(
      lower,
      observations.map((one) => covarianceOf(form, one.form)),
    )
  return {
    of: (form) => {
      const known = seen(form)
      const variance = covarianceOf(form, form) - dot(known, known)
      const sigma = Math.sqrt(Math.max(0, variance))
      return bellOf(form, form.mid + dot(known, misses), sigma)
    },
    covariance: (a, b) => covarianceOf(a, b) - dot(seen(a), seen(b)),
  }
}

const UNOBSERVED: Belief = {
  of: (form) => bellOf(form, form.mid, Math.sqrt(covarianceOf(form, form))),
  covariance: covarianceOf,
}

/** A quantity that was found to lie nearly as low as it was sure to reach is taken at its word. */
function bellOf({ least }: Form, mean: number, sigma: number): Bell {
  return { mean, sigma, least: least < mean - sigma ? least : 0 }
}

/** An observation beside what all the others, and what was known before, would have foretold. */
export interface Foretold {
  readonly id: string
  readonly value: number
  /** Of the reading, its own noise included. */
  readonly foretold: Bell
  /** How many deviations off. */
  readonly off: number
}

/**
 * Every observation held against the belief from all the others. One factorisation serves all of
 * them: with A the covariance of the readings and r their misses, the miss left out is (A⁻¹r)ᵢ ÷
 * (A⁻¹)ᵢᵢ and its variance 1 ÷ (A⁻¹)ᵢᵢ (Rasmussen and Williams 2006, eq. 5.12).
 */
export function foretellEach(observations: readonly Observation[]): readonly Foretold[] {
  const lower = factorReadings(observations)
  const missed = observations.map(({ value, form }) => value - form.mid)
  const weighed = backwards(lower, forwards(lower, missed))
  return observations.map(({ id, value }, i) => {
    const unit = forwards(
      lower,
      observations.map((_, k) => (k === i ? 1 : 0)),
    )
    const precision = dot(unit, unit)
    const miss = (weighed[i] ?? 0) / precision
    const sigma = 1 / Math.sqrt(precision)
    return { id, value, foretold: { mean: value - miss, sigma }, off: miss / sigma }
  })
}

/**
 * Readings far finer than what they are of would cancel to nothing in double precision; so much of
 * the variance is left to every reading.
 */
const ROUNDING = 1e-12

function factorReadings(observations: readonly Observation[]): Float64Array {
  return factorise(observations.length, (i, j) => {
    const [a, b] = [observations[i], observations[j]]
    if (a === undefined || b === undefined) return 0
    const shared = covarianceOf(a.form, b.form)
    return i === j ? shared * (1 + ROUNDING) + a.noise ** 2 : shared
  })
}
