import type { Laying } from '../areas/laying.ts'
import type { CutLayer, Grids } from '../cut/cutLayer.ts'
import { insetOf } from '../cut/cutLayer.ts'
import { keepAway } from '../rows/keepAway.ts'
import { intersectAll, subtractRows } from '../rows/rowAlgebra.ts'
import type { RowSet } from '../rows/rowSet.ts'
import { emptyRows, isEmpty, rowLengthMm } from '../rows/rowSet.ts'

/**
 * Skins end under the edge of a neighbour by this much, or reach beyond it by it to count as more
 * than a band. Lines.
 */
const UNDER_EDGE_LINES = 0.5

export interface Between {
  readonly room: RowSet
  /** Row length of what would be room but for what skins carry on. mm */
  readonly heldMm: number
}

/**
 * Room of a layer: what its walls enclose and neither bare skin nor what is carried on from it.
 *
 * A place is bare when one of the T layers above or B below does not cover it; over slopes the
 * bands of all those layers add up. A layer covers only what lies half a line deep in it, so that a
 * step inwards narrower than the walls still has its band. Around every bare place the skin goes on
 * for `slopeBandMm`; that is the least width of any band. Where the bare place reaches half a line
 * or more beyond the edge it goes on for `holdMm`.
 *
 * Tried and left, on 27 toolpaths of two and three walls: a least step of 1.25 lines instead of a
 * least cover of half a line (mean miss of the half that shaped it 3.6 for 3.7 %, of the half that
 * checks it 3.2 for 2.8 %), of 1 line (3.9 and 3.9 %), of 0.5 (8.4 and 5.5 %).
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
  if (habits.holdMm > habits.slopeBandMm + under) {
    const reaching = subtractRows(inside, coveredAt(-under))
    room = keepAway(room, reaching, habits.holdMm + under, grid)
  }
  return { room, heldMm: rowLengthMm(covered) - rowLengthMm(room) }
}
