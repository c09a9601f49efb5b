import type { FigureDoubt } from '../model/doubt.ts'
import type { Range } from '../model/figures.ts'
import { rangeOf } from './bell.ts'

/**
 * The range of a figure by itself; figures that are off together are put together in
 * `understand`.
 */
export function rangeOfFigure(mid: number, { shared, own, least }: FigureDoubt): Range {
  let squares = own * own
  for (const { effect } of shared) squares += effect * effect
  const sigma = mid * Math.sqrt(squares)
  return rangeOf({ mean: mid, sigma, ...(least === undefined ? {} : { least: mid * least }) })
}

/** A further error of the figure's own, as a share that holds 95 % of cases. */
export function doubtMore(doubt: FigureDoubt, reach: number): FigureDoubt {
  return { shared: doubt.shared, own: Math.hypot(doubt.own, reach / 2) }
}

/**
 * The doubt of a sum of independent figures, each with its share of the sum; errors both carry
 * add.
 */
export function mixDoubts(
  parts: readonly { readonly share: number; readonly doubt: FigureDoubt }[],
): FigureDoubt {
  const shared = new Map<string, { id: string; name: string; effect: number }>()
  let ownSquares = 0
  for (const { share, doubt } of parts) {
    ownSquares += (share * doubt.own) ** 2
    for (const { id, name, effect } of doubt.shared) {
      const known = shared.get(id)
      if (known) known.effect += share * effect
      else shared.set(id, { id, name, effect: share * effect })
    }
  }
  return { shared: [...shared.values()], own: Math.sqrt(ownSquares) }
}
