import type { RowSet } from './rowSet.ts'
import { emptyRows, isEmpty } from './rowSet.ts'
import type { ScanGrid } from './scanGrid.ts'
import { createStretchList } from './stretchList.ts'

const list = createStretchList()

/** What lies within `radiusMm` of a region, the region included. Good until the next call, which uses the same memory. */
export function growRows(region: RowSet, radiusMm: number, grid: ScanGrid): RowSet {
  if (isEmpty(region)) return emptyRows(grid.rows)
  if (radiusMm <= 0) return region
  const { pitchMm, rows } = grid
  const reach = Math.floor(radiusMm / pitchMm)
  list.clear()
  for (let away = -reach; away <= reach; away++) {
    const mm = away * pitchMm
    const wider = Math.sqrt(radiusMm * radiusMm - mm * mm)
    list.addWider(region, away, wider, rows)
  }
  return list.toRows(rows)
}
