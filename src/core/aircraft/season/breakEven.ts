/** Money spent on a frame: what it cost at first, and what each broken arm adds. */
export interface BreakCosts {
  readonly first: number
  readonly perBreak: number
}

/** Spent after `breaks` broken arms. */
export function spentAfter(costs: BreakCosts, breaks: number): number {
  return costs.first + breaks * costs.perBreak
}

/**
 * Least number of broken arms at which `one` has cost less than `other`; null when it never does.
 */
export function cheaperFrom(one: BreakCosts, other: BreakCosts): number | null {
  const ahead = one.first - other.first
  if (ahead < 0) return 0
  const gain = other.perBreak - one.perBreak
  if (!(gain > 0)) return null
  const breaks = Math.floor(ahead / gain) + 1
  return Number.isSafeInteger(breaks) ? breaks : null
}
