import type { Elastic } from '../moduli/elastic.ts'
import { MODE_STRIDE } from './types.ts'

/**
 * What a cell's modes of strain meet: the nine moduli, then the two-way moduli with x free to
 * give, with y free, and with z free, which is what bending meets once the incompatible modes have
 * given way (see `applyLevel`).
 */
export function writeModes(table: Float64Array, row: number, elastic: Elastic): void {
  const { c11, c22, c33, c12, c13, c23, g12, g13, g23 } = elastic
  table.set([c11, c22, c33, c12, c13, c23, g12, g13, g23], row * MODE_STRIDE)
  relax(table, row)
}

/** Fills in the two-way moduli from a row's nine. */
export function relax(table: Float64Array, row: number): void {
  const at = row * MODE_STRIDE
  const [c11, c22, c33] = [table[at]!, table[at + 1]!, table[at + 2]!]
  const [c12, c13, c23] = [table[at + 3]!, table[at + 4]!, table[at + 5]!]
  table[at + 9] = c22 - (c12 * c12) / c11
  table[at + 10] = c23 - (c12 * c13) / c11
  table[at + 11] = c33 - (c13 * c13) / c11
  table[at + 12] = c11 - (c12 * c12) / c22
  table[at + 13] = c13 - (c12 * c23) / c22
  table[at + 14] = c33 - (c23 * c23) / c22
  table[at + 15] = c11 - (c13 * c13) / c33
  table[at + 16] = c12 - (c13 * c23) / c33
  table[at + 17] = c22 - (c23 * c23) / c33
}
