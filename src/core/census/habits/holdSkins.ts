import type { Laying } from '../areas/laying.ts'
import type { CutLayer, Grids } from '../cut/cutLayer.ts'
import { insetOf } from '../cut/cutLayer.ts'
import { keepAway } from '../rows/keepAway.ts'
import { intersectAll, subtractRows } from '../rows/rowAlgebra.ts'
import type { RowSet } from '../rows/rowSet.ts'
import { emptyRows, isEmpty, rowLengthMm } from '../rows/rowSet.ts'

/** Skins end under the edge of a neighbour by this much. Lines. */
const UNDER_EDGE_LINES = 0.25

/** Bare places that reach so far beyond the edge are more than a band. Lines. */
const BEYOND_EDGE_LINES = 0.5

export interface Between {
  readonly room: RowSet
  /** Row length of what would be room but for what skins carry on. mm */
  readonly heldMm: number
}

/**
 * Room of a layer: what its walls enclose and neither bare skin nor what is carried on from it.
 *
 * A place is bare when one of the T layers above or B below does not cover it; over slopes the
 * bands of all those layers add up. A layer covers only what lies a quarter of a line deep in it,
 * so that a step inwards a little narrower than the walls still has its band. Around every bare
 * place the skin goes on for `slopeBandMm`; that is the least width of any band. Where the bare
 * place reaches half a line or more beyond the edge it goes on for `holdMm`.
 *
 * Measured: on five of the toolpaths that shape the rules, places inside the walls were solid up to
 * 3.6 mm (mean) from what the next layer leaves bare and up to 4.2 to 4.9 mm from what one further
 * off does: skins widen from layer to layer. Of the 27 pairs without the one that was laid with
 * fewer walls than set, the mean and the root mean square of the misses, %, by how deep a layer
 * must cover a place and by the band (skins under all undersides as in `skinReachOf`):
 *
 * | cover, lines | band, mm | 13 that shaped it | 13 that checked it |
 * |--------------|----------|-------------------|--------------------|
 * | 0.5          | 3        | 1.89, 2.45        | 2.14, 2.62         |
 * | 0.5          | 4        | 2.47, 3.09        | 2.61, 3.27         |
 * | 0.25         | 3        | 2.16, 2.70        | 2.10, 2.71         |
 * | 0.25         | 3.5      | 1.84, 2.24        | 1.82, 2.40         |
 * | 0.25         | 4        | 2.22, 2.51        | 1.96, 2.56         |
 * | 0            | 3.5      | 1.94, 2.42        | 1.99, 2.51         |
 * | 0            | 4        | 1.86, 2.12        | 1.75, 2.31         |
 *
 * Half a line, as before, put bands round four countersinks of a plate whose walls take up the
 * step; its toolpath has none there. None at all was left: four skins of 0.2 mm on a slope of 45°
 * step as far as two walls of 0.4 mm reach, and rounding would say whether that is bare.
 */
export function roomBetween(
  layer: CutLayer,
  neighbours: readonly (CutLayer | null)[],
  inside: RowSet,
  along: 0 | 1,
  { habits, wallMm, lineMm }: Laying,
  grids: Grids,
): Between {
  const grid = grids[along]
  if (neighbours.includes(null)) return { room: emptyRows(grid.rows), heldMm: 0 }
  const under = Math.min(wallMm, UNDER_EDGE_LINES * lineMm)
  const coveredAt = (depthMm: number): RowSet => {
    const covers = new Set<RowSet>()
    for (const neighbour of neighbours) {
      if (neighbour && neighbour !== layer) covers.add(insetOf(neighbour, along, depthMm, grids))
    }
    return intersectAll(inside, [...covers])
  }
  const covered = coveredAt(habits.slopeBandMm > 0 ? under : 0)
  if (isEmpty(covered)) return { room: covered, heldMm: 0 }
  let room = keepAway(covered, subtractRows(inside, covered), habits.slopeBandMm, grid)
  // Where the band reaches as far as the hold would, all is done.
  const beyondMm = Math.min(wallMm, BEYOND_EDGE_LINES * lineMm)
  if (habits.holdMm > habits.slopeBandMm + under) {
    const reaching = subtractRows(inside, coveredAt(-beyondMm))
    room = keepAway(room, reaching, habits.holdMm + beyondMm, grid)
  }
  return { room, heldMm: rowLengthMm(covered) - rowLengthMm(room) }
}
