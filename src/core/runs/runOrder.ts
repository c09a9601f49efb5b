/** What the order of runs goes by. */
export interface OrderedRun {
  readonly timeS: number
  /** How many parts wait for what is in it. */
  readonly waits: number
  /** Before all that are none. */
  readonly isCoupon?: boolean
}

/**
 * Runs in the order in which parts wait least: by hours for each part that waits, the run's own
 * counted as one (W. E. Smith, Naval Research Logistics Quarterly 3, 1956, 59–66, from memory; the
 * tests try every order). Where nothing is joined that is the shortest first, so that what does not
 * fit shows early. Coupons are before all.
 */
export function inOrder<T extends OrderedRun>(runs: readonly T[]): readonly T[] {
  const rank = ({ timeS, waits }: OrderedRun): number => timeS / (1 + waits)
  return runs.toSorted((a, b) => late(a) - late(b) || rank(a) - rank(b) || a.timeS - b.timeS)
}

function late({ isCoupon }: OrderedRun): number {
  return isCoupon === true ? 0 : 1
}

/**
 * The same for several printers, each of which starts its next run as soon as the last ends: by
 * when they start, of those that start at once coupons first.
 */
export function inStartOrder<T extends OrderedRun & { readonly printerId: string }>(
  runs: readonly T[],
): readonly T[] {
  const ids = [...new Set(runs.map(({ printerId }) => printerId))]
  const started = ids.flatMap((id) => {
    let startS = 0
    return inOrder(runs.filter(({ printerId }) => printerId === id)).map((run) => {
      const own = { run, startS }
      startS += run.timeS
      return own
    })
  })
  return started
    .toSorted((a, b) => a.startS - b.startS || late(a.run) - late(b.run))
    .map(({ run }) => run)
}
