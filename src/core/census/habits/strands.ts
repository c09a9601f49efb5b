import type { LayerAreas } from '../areas/layerAreas.ts'
import { intersectAll, subtractRows } from '../rows/rowAlgebra.ts'
import { isEmpty, rowLengthMm } from '../rows/rowSet.ts'

/**
 * Room of a layer that is solid two layers further up, half of it: what the layer above it, or that one, lays as strands, lines
 * that hang from wall to wall or from infill line to infill line. Layers are scanned along x and along y by turns, so each is
 * compared with the next that is scanned its way, and every roof of two layers or more is met twice, half each time.
 * mm²
 */
export function strandsOver(lower: LayerAreas, upper: LayerAreas): number {
  if (lower === upper || isEmpty(lower.room)) return 0
  const rows = isEmpty(upper.room) ? lower.room : subtractRows(lower.room, upper.room)
  // What of it is still inside the part two layers further up; a roof thinner than that is no skin of any recipe.
  return (rowLengthMm(intersectAll(rows, [upper.inside])) * lower.grid.pitchMm) / 2
}
