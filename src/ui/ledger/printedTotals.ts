import type { FrameRow } from '../../core/frame/types.ts'
import type { Range } from '../../core/model/figures.ts'

/**
 * What a row of the ledger shows: the mass of what flies; cost and hours of all that is printed.
 */
export function printedTotals({ flying, withSpares }: Pick<FrameRow, 'flying' | 'withSpares'>): {
  readonly massG: Range
  readonly cost: Range
  readonly timeS: Range
} {
  return { massG: flying.massG, cost: withSpares.cost, timeS: withSpares.timeS }
}
