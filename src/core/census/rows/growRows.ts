import type { RowSet } from './rowSet.ts'
import { emptyRows, isEmpty } from './rowSet.ts'
import type { ScanGrid } from './scanGrid.ts'
import { createStretchList } from './stretchList.ts'

/** A radius is at least so many blocks of rows, where rows are that narrow. */
const BLOCKS = 8

const near = createStretchList()
const far = createStretchList()

/**
 * What lies within `radiusMm` of a region, the region included. Good until the next call, which
 * uses the same memory.
 *
 * Every stretch goes to every row within the radius, the longer the nearer. In two steps: first to
 * the rows next to it, as they are, then by whole blocks of such rows, so that a radius of 24 rows
 * takes 3 + 17 stretches instead of 49. The blocks are as wide as their middle rows.
 *
 * | blocks in a radius | skins of a ball, against polygons | ms, an arm | ms, a wavy ball |
 * |--------------------|-----------------------------------|------------|-----------------|
 * | 5                  | +3.4 %                            | 105        | 427             |
 * | 8                  | +1.3 %                            | 110        | 460             |
 * | every row by itself | −0.5 %                           | 127        | 761             |
 */
export function growRows(region: RowSet, radiusMm: number, grid: ScanGrid): RowSet {
  if (isEmpty(region)) return emptyRows(grid.rows)
  if (radiusMm <= 0) return region
  const { pitchMm, rows } = grid
  const reach = Math.floor(radiusMm / pitchMm)
  // Odd, so that a block has a middle row.
  const block = 2 * Math.floor(reach / BLOCKS / 2) + 1
  const half = (block - 1) / 2
  let thick = region
  if (half > 0) {
    near.clear()
    for (let away = -half; away <= half; away++) near.addWider(region, away, 0, rows)
    thick = near.toRows(rows)
  }
  far.clear()
  const last = reach - half
  for (let away = -last; away <= last; away += Math.min(block, Math.max(1, last - away))) {
    const mm = away * pitchMm
    far.addWider(thick, away, Math.sqrt(radiusMm * radiusMm - mm * mm), rows)
    if (away === last) break
  }
  return far.toRows(rows)
}
