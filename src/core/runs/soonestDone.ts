/** Steps of the search; past them the best so far stands. Ten runs on three printers take fewer. */
const MOST_STEPS = 60_000

/**
 * Which printer each run goes on, so that the last of all is done soonest: longest first, each
 * where it ends first, and from there every other way, left as soon as it cannot be better (what is
 * loaded, and what is left spread evenly, are never less than what it comes to).
 *
 * @param timesS by run, then by printer, s; null where the run does not go on that printer, and
 *   never on none.
 * @returns the place of its printer, by run.
 */
export function soonestDone(timesS: readonly (readonly (number | null)[])[]): readonly number[] {
  const count = timesS[0]?.length ?? 0
  const leastOf = (own: readonly (number | null)[]): number =>
    Math.min(...own.map((timeS) => timeS ?? Infinity))
  const order = timesS
    .map((own, at) => ({ own, at, least: leastOf(own) }))
    .toSorted((a, b) => b.least - a.least)
  const leftS = order.map((_, i) => order.slice(i).reduce((sum, { least }) => sum + least, 0))
  const loads = Array.from({ length: count }, () => 0)
  const chosen = timesS.map(() => 0)
  let best: readonly number[] | null = null
  let bestS = Infinity
  let steps = 0
  const place = (i: number): void => {
    const run = order[i]
    const endS = Math.max(0, ...loads)
    if (run === undefined) {
      if (endS < bestS - 1e-9) [best, bestS] = [[...chosen], endS]
      return
    }
    const loadedS = loads.reduce((sum, load) => sum + load, 0)
    if (Math.max(endS, (loadedS + (leftS[i] ?? 0)) / count) >= bestS - 1e-9) return
    if (best !== null && ++steps > MOST_STEPS) return
    const places = run.own
      .flatMap((timeS, k) => (timeS === null ? [] : [{ k, timeS, endS: (loads[k] ?? 0) + timeS }]))
      .toSorted((a, b) => a.endS - b.endS)
    for (const { k, timeS } of places) {
      loads[k] = (loads[k] ?? 0) + timeS
      chosen[run.at] = k
      place(i + 1)
      loads[k] -= timeS
    }
  }
  place(0)
  return best ?? chosen
}
