import { findBridges } from '../cut/bridges.ts'
import type { CutLayer, Grids } from '../cut/cutLayer.ts'
import { insetOf } from '../cut/cutLayer.ts'
import { subtractRows, uniteRows } from '../rows/rowAlgebra.ts'
import type { RowSet } from '../rows/rowSet.ts'
import { emptyRows, isEmpty, rowLengthMm } from '../rows/rowSet.ts'

/**
 * Follows support columns down through the layers. Call with each layer and the one beneath, from
 * the top; returns the area of the columns that cross the layer beneath. mm²
 *
 * A place needs support when it reaches beyond the layer beneath by more than `stepMm` (layer
 * height × tan of the angle). Lines across a gap with two sides hold themselves; see `findBridges`.
 * A column stands on the bed or on the part, and never inside it.
 */
export function createSupportColumns(
  grids: Grids,
): (layer: CutLayer, beneath: CutLayer, stepMm: number) => number {
  const lower = createColumnRows(grids)
  return (...layers) => rowLengthMm(lower(...layers)) * grids[0].pitchMm
}

/** The same, as the rows along u that the columns lie on. */
export function createColumnRows(
  grids: Grids,
): (layer: CutLayer, beneath: CutLayer, stepMm: number) => RowSet {
  let columns: RowSet = emptyRows(grids[0].rows)
  return (layer, beneath, stepMm) => {
    if (layer !== beneath) {
      const hanging = subtractRows(layer.rows[0], insetOf(beneath, 0, -stepMm, grids))
      if (!isEmpty(hanging)) {
        columns = uniteRows(columns, subtractRows(hanging, findBridges(layer, beneath, grids)))
      }
    }
    columns = subtractRows(columns, beneath.rows[0])
    return columns
  }
}
