import type { Range } from '../model/figures.ts'
import type { Spread } from '../figures/spread.ts'
import type { MassDoubt, SharedError, UncertainMass } from './doubt.ts'
import { chanceBelow, fitSplitNormal, quantile, splitMoments } from './splitNormal.ts'
import type { Moments } from './splitNormal.ts'

export type Verdict = 'below' | 'above' | 'too close to say'

/** One source of doubt: a shared error, or a line's own. */
export interface DoubtSource {
  /** Of the shared error or the line. */
  readonly id: string
  readonly name: string
  readonly kind: 'shared' | 'own'
  /** One standard deviation of the total from this source alone. g */
  readonly sigmaG: number
  /** Of the total's variance, 0–1; all sources sum to 1. */
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
  /** What is to be expected; above `midG` where errors lean to the heavy side. */
  readonly meanG: number
  readonly sigmaG: number
  /** Holds 95 % of cases. */
  readonly rangeG: Range
  /** The largest first; empty when nothing is in doubt. */
  readonly sources: readonly DoubtSource[]
  /** The most useful first; only those that help. */
  readonly measurements: readonly Measurement[]
}

/** A range is taken to hold 95 % of cases: two standard deviations to each side (coverage factor 2, JCGM 100:2008, 6.3.3). */
const COVERAGE = 2
/** Nobody is told yes or no this near to a line, however sure the sum is: scales, glue and law books are not that exact. */
const TOO_CLOSE_SHARE = 0.03
/** Chance from which on a yes or no is given (common practice, no source). */
const SURE = 0.95

/**
 * The chance that the total ends below a threshold (g), who is to blame for the doubt, and what to measure next.
 *
 * Every error is a split normal with its top at the middle figure, so that ranges may be lopsided. Own errors are independent;
 * a shared error moves all its lines together. Errors are small, so their effects are added; means, variances and third moments
 * then add exactly, and a split normal with the same three moments gives the chance. Held against a Monte Carlo that multiplies.
 */
export function massOdds(doubt: MassDoubt, thresholdG: number): MassOdds {
  const midG = doubt.masses.reduce((sum, mass) => sum + mass.massG, 0)
  const sources = sourcesOf(doubt)
  const total = sumMoments(midG, sources)
  const fit = fitSplitNormal(total)
  const chance = chanceBelow(fit, thresholdG)
  const sigmaG = Math.sqrt(total.variance)
  return {
    thresholdG,
    chanceBelow: chance,
    verdict: verdictOf(chance, [midG, total.mean], thresholdG),
    midG,
    meanG: total.mean,
    sigmaG,
    rangeG: {
      low: quantile(fit, 0.025),
      mid: total.mean,
      high: quantile(fit, 0.975),
    },
    sources: sources
      .filter(({ moments }) => moments.variance > 0)
      .map(({ id, name, kind, moments }) => ({
        id,
        name,
        kind,
        sigmaG: Math.sqrt(moments.variance),
        share: moments.variance / total.variance,
      }))
      .toSorted((a, b) => b.share - a.share),
    measurements: measurementsOf(doubt, total.variance),
  }
}

interface Source {
  readonly id: string
  readonly name: string
  readonly kind: DoubtSource['kind']
  /** Of its deviation from the middle, g. */
  readonly moments: Moments
}

function sourcesOf({ masses, shared }: MassDoubt): readonly Source[] {
  return [
    ...shared.map(({ id, name, spread }): Source => {
      const movedG = masses.reduce(
        (sum, mass) => sum + (mass.sharedIds.includes(id) ? mass.massG : 0),
        0,
      )
      return { id, name, kind: 'shared', moments: deviation(movedG, spread) }
    }),
    ...masses.map(({ id, name, massG, spread }): Source => ({
      id,
      name,
      kind: 'own',
      moments: deviation(massG, spread),
    })),
  ]
}

function deviation(massG: number, spread: Spread): Moments {
  return splitMoments({
    mode: 0,
    sigmaLow: (massG * spread.low) / COVERAGE,
    sigmaHigh: (massG * spread.high) / COVERAGE,
  })
}

function sumMoments(midG: number, sources: readonly Source[]): Moments {
  const sum = (pick: (moments: Moments) => number): number =>
    sources.reduce((total, { moments }) => total + pick(moments), 0)
  return {
    mean: midG + sum((moments) => moments.mean),
    variance: sum((moments) => moments.variance),
    third: sum((moments) => moments.third),
  }
}

/** Whether a mass lies so near a threshold that nobody may be told yes or no. */
export function isTooClose(massG: number, thresholdG: number): boolean {
  return Math.abs(massG - thresholdG) <= TOO_CLOSE_SHARE * thresholdG
}

function verdictOf(chance: number, centresG: readonly number[], thresholdG: number): Verdict {
  if (centresG.some((g) => isTooClose(g, thresholdG))) return 'too close to say'
  if (chance >= SURE) return 'below'
  return chance <= 1 - SURE ? 'above' : 'too close to say'
}

/** Tries every measurement in turn and keeps those that take doubt away, the most useful first. */
function measurementsOf(doubt: MassDoubt, variance: number): readonly Measurement[] {
  if (!(variance > 0)) return []
  const after = (id: string, text: string, changed: MassDoubt): Measurement => {
    const left = sumMoments(0, sourcesOf(changed)).variance
    return { id, text, sigmaAfterG: Math.sqrt(left), gain: 1 - left / variance }
  }
  const { masses, shared } = doubt
  return [
    ...shared.flatMap((error) =>
      error.measure === null
        ? []
        : after(error.id, error.measure, {
            masses,
            shared: shared.map((one) => (one === error ? measured(error) : one)),
          }),
    ),
    ...masses.map((mass) =>
      after(mass.id, `Weigh one “${mass.name}”`, {
        masses: masses.map((one) => (one === mass ? weighed(mass) : one)),
        shared,
      }),
    ),
  ]
    .filter((one) => one.gain > 1e-9)
    .toSorted((a, b) => b.gain - a.gain)
}

function measured(error: SharedError): SharedError {
  return { ...error, spread: error.spreadMeasured }
}

function weighed(mass: UncertainMass): UncertainMass {
  if (mass.spreadWeighed === null) return mass
  return { ...mass, spread: mass.spreadWeighed, sharedIds: [] }
}
