import type { LayerAreas } from '../areas/layerAreas.ts'
import { intersectAll, subtractRows } from '../rows/rowAlgebra.ts'
import { isEmpty, rowLengthMm } from '../rows/rowSet.ts'

/**
 * A quarter of the room of a layer that is solid two layers further up. What turns solid is laid as strands there, lines that
 * hang from wall to wall or from infill line to infill line. Layers are scanned along x and along y by turns, so each is compared
 * with the next that is scanned its way: every roof of two layers or more is met twice, and each time it may be either of two
 * layers. mm²
 */
export function strandsOver(lower: LayerAreas, upper: LayerAreas): number {
  if (lower === upper || isEmpty(lower.room)) return 0
  const rows = isEmpty(upper.room) ? lower.room : subtractRows(lower.room, upper.room)
  // What of it is still inside the part two layers further up; a roof thinner than that is no skin of any recipe.
  return (rowLengthMm(intersectAll(rows, [upper.inside])) * lower.grid.pitchMm) / 4
}
