import type { LayerAreas } from '../areas/layerAreas.ts'
import type { CutLayer } from '../cut/cutLayer.ts'
import { sharedLengthMm } from '../rows/rowAlgebra.ts'
import { isEmpty, rowLengthMm } from '../rows/rowSet.ts'

/**
 * A quarter of the room of a layer that is solid two layers further up. What turns solid is laid as
 * strands there, lines that hang from wall to wall or from infill line to infill line. Layers are
 * scanned along x and along y by turns, so each is compared with the next that is scanned its way:
 * every roof of two layers or more is met twice, and each time it may be either of two layers. mm²
 */
export function strandsOver(lower: LayerAreas, upper: LayerAreas): number {
  if (lower === upper || isEmpty(lower.room)) return 0
  // What of it is still inside the part two layers further up; a roof thinner than that is no skin
  // of any recipe.
  const insideMm = sharedLengthMm(lower.room, upper.inside)
  return ((insideMm - sharedLengthMm(lower.room, upper.room)) * lower.grid.pitchMm) / 4
}

/**
 * What lies inside a layer's walls with nothing beneath it: an underside in the air, laid as
 * strands from edge to edge. mm²
 *
 * Measured on toolpaths, by the thickness of their lines: a plate over a gap was laid at 1.28 times
 * its area, a roof over sparse rooms at 1.35. Of 27 pairs, 14 of which shaped the rule (median,
 * mean, bias, one in ten beyond, %):
 *
 * | strands              | shaped it           | checked it          |
 * |----------------------|---------------------|---------------------|
 * | over rooms alone, 1.2 | 2.5, 3.8, −0.4, 8.8 | 1.5, 3.0, −1.6, 7.6 |
 * | and in the air, 1.2  | 2.4, 3.8, −0.4, 8.7 | 1.5, 2.9, −1.5, 7.0 |
 * | and in the air, 1.3  | 2.1, 3.7, −0.1, 8.4 | 2.1, 2.8, −1.3, 6.5 |
 */
export function strandsInAir(areas: LayerAreas, along: 0 | 1, beneath: CutLayer): number {
  const { inside, grid } = areas
  if (isEmpty(inside)) return 0
  return (rowLengthMm(inside) - sharedLengthMm(inside, beneath.rows[along])) * grid.pitchMm
}
