import { rangeOf } from '../doubt/bell.ts'
import type { FigureDoubt } from '../model/doubt.ts'
import type { Range } from '../model/figures.ts'
import type { TriedWay } from './partOptions.ts'

/** What one step of one part does to the frame; below zero is less. */
export interface StepSaving {
  readonly massG: Range
  readonly timeS: number
  readonly cost: number
  /**
   * Share of the part's stiffness that goes, 0.1 for a tenth; below zero it gains. Null where
   * nothing is known.
   */
  readonly stiffnessLost: number | null
}

/**
 * By what steps are ranked: grams alone, or grams for each per cent of stiffness, minute or unit of
 * money lost.
 */
export type Ranking = 'grams' | 'stiffness' | 'hours' | 'cost'

/**
 * From the part as it stands to the step. Errors that both share, as density, matter only as far as
 * the plastic differs; each one's own, the count's, is nobody else's where layers were counted
 * anew.
 */
export function savingOf(now: TriedWay, step: TriedWay, isCountedAnew: boolean): StepSaving {
  const { stiffness } = step
  return {
    massG: differenceRange(
      { mean: now.massG, doubt: now.figures.doubt.mass },
      { mean: step.massG, doubt: step.figures.doubt.mass },
      isCountedAnew,
    ),
    timeS: step.timeS - now.timeS,
    cost: step.cost - now.cost,
    stiffnessLost: stiffness === Infinity ? null : 1 - stiffness,
  }
}

interface Doubted {
  readonly mean: number
  readonly doubt: FigureDoubt
}

function differenceRange(now: Doubted, step: Doubted, isCountedAnew: boolean): Range {
  const effects = new Map<string, number>()
  for (const { id, effect } of step.doubt.shared) effects.set(id, step.mean * effect)
  for (const { id, effect } of now.doubt.shared) {
    effects.set(id, (effects.get(id) ?? 0) - now.mean * effect)
  }
  const ownNow = now.mean * now.doubt.own
  const ownStep = step.mean * step.doubt.own
  const own = isCountedAnew ? Math.hypot(ownNow, ownStep) : Math.abs(ownStep - ownNow)
  let squares = own * own
  for (const effect of effects.values()) squares += effect * effect
  const mid = step.mean - now.mean
  // The range of a size, for a difference either way.
  const { low, high } = rangeOf({ mean: Math.abs(mid), sigma: Math.sqrt(squares) })
  return mid < 0 ? { low: -high, mid, high: -low } : { low, mid, high }
}

/** Less lost than this is nothing: the figures do not tell it. */
const LEAST_LOST: Readonly<Record<Exclude<Ranking, 'grams'>, number>> = {
  stiffness: 0.005,
  hours: 60,
  cost: 0.01,
}

/**
 * How good a saving is, more being better: grams saved, or grams for each unit lost. What loses
 * nothing that can be told comes before all that does, by its grams.
 */
export function worthOf(saving: StepSaving, by: Ranking): number {
  const savedG = -saving.massG.mid
  if (by === 'grams') return savedG
  const lost = { stiffness: saving.stiffnessLost ?? 0, hours: saving.timeS, cost: saving.cost }[by]
  const least = LEAST_LOST[by]
  return lost <= least ? FREE * savedG : savedG / lost
}

/** Larger than any grams a unit can be worth. */
const FREE = 1e9
