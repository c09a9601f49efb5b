import type { FigureDoubt } from '../model/doubt.ts'
import type { Range } from '../model/figures.ts'
import { rangeOf } from './bell.ts'

/**
 * The range of a figure by itself; figures that are off together are put together in
 * `understand`.
 */
export function rangeOfFigure(mid: number, { shared, own }: FigureDoubt): Range {
  const sigma = mid * Math.hypot(own, ...shared.map(({ effect }) => effect))
  return rangeOf({ mean: mid, sigma })
}

/** A further error of the figure's own, as a share that holds 95 % of cases. */
export function doubtMore(doubt: FigureDoubt, reach: number): FigureDoubt {
  return { ...doubt, own: Math.hypot(doubt.own, reach / 2) }
}

/**
 * The doubt of a sum of independent figures, each with its share of the sum; errors both carry
 * add.
 */
export function mixDoubts(
  parts: readonly { readonly share: number; readonly doubt: FigureDoubt }[],
): FigureDoubt {
  const shared = new Map<string, { id: string; name: string; effect: number }>()
  for (const { share, doubt } of parts) {
    for (const { id, name, effect } of doubt.shared) {
      const known = shared.get(id)
      if (known) known.effect += share * effect
      else shared.set(id, { id, name, effect: share * effect })
    }
  }
  return {
    shared: [...shared.values()],
    own: Math.hypot(...parts.map(({ share, doubt }) => share * doubt.own)),
  }
}
