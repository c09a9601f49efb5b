import { BUDGET_S } from '../model/census.ts'

/**
 * How long a part has been worked on, from its bytes on. Told by whoever has a clock: the core has
 * none.
 */
export interface Budget {
  /** Processor time so far. s */
  spentS(): number
}

/** Of it, a coarse count takes at most this at the end. s */
const COARSE_S = 2.5
/** A full count is given up when this little is left. s */
const LAST_S = 3

/** Whether it is time to be content with a coarse count. */
export function isSpent(budget: Budget | undefined): boolean {
  return budget !== undefined && budget.spentS() > BUDGET_S - LAST_S
}

/** Of so many layers alike one is counted at least. */
const FINEST = 8
/** Of any part so many layers are counted at least, however long they take. */
const FEWEST = 3
/**
 * Layers cut for each one that is counted: itself and one or two that must cover it above and
 * below.
 */
const CUT_FOR_ONE = 4

/** One in how many layers may be counted, where the full count took `layerS` for each. */
export function affordableStride(layers: number, layerS: number): number {
  const whole = (layers * CUT_FOR_ONE * layerS) / COARSE_S
  const coarsest = Math.max(FINEST, Math.floor(layers / FEWEST))
  return Math.min(coarsest, Math.max(FINEST, Math.ceil(whole)))
}
