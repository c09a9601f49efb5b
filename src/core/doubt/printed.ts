import type { FigureDoubt, SharedError } from '../model/doubt.ts'
import type { Material } from '../model/figures.ts'
import {
  changesLength,
  endsError,
  firstLayerError,
  layingErrors,
  spoolErrors,
  supportError,
} from './factors.ts'

/** Of what a part's plastic consists, as far as its errors differ by it. */
export interface PartShares {
  /** Share (0–1) of the plastic that lies line beside line. */
  readonly packed: number
  /** Share (0–1) of it in the first layer. */
  readonly firstLayer: number
  /** Share (0–1) of it in turns at the ends of infill lines. */
  readonly turns: number
  /** What the part's habits of laying add, one error each. */
  readonly habits: readonly SharedError[]
  /** How far the count of this part alone may be off, as a share that holds 95 % of cases. */
  readonly count: number
}

/** How far the mass of a printed part may be off. */
export function printedDoubt(
  material: Material,
  printerId: string,
  { packed, firstLayer, turns, habits, count }: PartShares,
): FigureDoubt {
  return {
    shared: [
      ...spoolErrors(material),
      ...layingErrors(printerId, material, packed),
      firstLayerError(printerId, firstLayer),
      endsError(printerId, turns),
      ...habits,
    ],
    own: count / 2,
  }
}

/**
 * How far what a print takes off the spool may be off: the kept part as it is, and of the
 * `removed` share of it (support and brim) the `support` share by its own rule.
 */
export function spoolDoubt(
  kept: FigureDoubt,
  printerId: string,
  removed: number,
  support: number,
): FigureDoubt {
  const own = kept.own * (1 - removed)
  return { shared: [...kept.shared, supportError(printerId, support)], own }
}

/** The same of filament by length. */
export function lengthDoubt({ shared, own }: FigureDoubt): FigureDoubt {
  return { shared: shared.filter(changesLength), own }
}
