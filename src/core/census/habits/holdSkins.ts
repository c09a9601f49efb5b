import type { Laying } from '../areas/laying.ts'
import type { CutLayer, Grids } from '../cut/cutLayer.ts'
import { insetOf } from '../cut/cutLayer.ts'
import { growRows } from '../rows/growRows.ts'
import { intersectAll, subtractRows } from '../rows/rowAlgebra.ts'
import type { RowSet } from '../rows/rowSet.ts'
import { emptyRows, isEmpty } from '../rows/rowSet.ts'

/** Skins end under the edge of a neighbour by this much, or reach beyond it by it to count as more than a band. Lines. */
const UNDER_EDGE_LINES = 0.5

/**
 * Room of a layer: what its walls enclose and neither bare skin nor what is carried on from it.
 *
 * A place is bare when one of the T layers above or B below does not cover it; over slopes the bands of all those layers add
 * up. A layer covers only what lies half a line deep in it, so that a step inwards narrower than the walls still has its band.
 * Around every bare place the skin goes on for `slopeBandMm`; that is the least width of any band. Where the bare place reaches
 * half a line or more beyond the edge it goes on for `holdMm`.
 */
export function roomBetween(
  layer: CutLayer,
  neighbours: readonly (CutLayer | null)[],
  inside: RowSet,
  along: 0 | 1,
  { habits, wallMm, lineMm }: Laying,
  grids: Grids,
): RowSet {
  const grid = grids[along]
  if (neighbours.includes(null)) return emptyRows(grid.rows)
  const under = Math.min(wallMm, UNDER_EDGE_LINES * lineMm)
  const coveredAt = (depthMm: number): RowSet => {
    const covers = new Set<RowSet>()
    for (const neighbour of neighbours) {
      if (neighbour && neighbour !== layer) covers.add(insetOf(neighbour, along, depthMm, grids))
    }
    return intersectAll(inside, [...covers])
  }
  const grown = (bare: RowSet, radiusMm: number, room: RowSet): RowSet =>
    isEmpty(bare) ? room : subtractRows(room, growRows(bare, radiusMm, grid))
  const covered = coveredAt(habits.slopeBandMm > 0 ? under : 0)
  if (isEmpty(covered)) return covered
  const room = grown(subtractRows(inside, covered), habits.slopeBandMm, covered)
  // Any place within that reach is within the band's, and all is done.
  if (habits.holdMm + under <= habits.slopeBandMm + 2 * under) return room
  return grown(subtractRows(inside, coveredAt(-under)), habits.holdMm + under, room)
}
