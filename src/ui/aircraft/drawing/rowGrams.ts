import type { LedgerRow } from '../../../state/store/derived.ts'
import { showGrams } from '../../show.ts'

/** Mass of all flying pieces of a row, g, as its cell shows it; empty while there is none. */
export function rowGrams(row: LedgerRow): string {
  return row.sum === null ? '' : showGrams(row.sum.flying.massG).mid
}
