import { greenArea } from '../cut/contours.ts'
import type { CutLayer, Grids } from '../cut/cutLayer.ts'
import { scanEdgeBand } from '../rows/edgeBand.ts'
import { subtractRows } from '../rows/rowAlgebra.ts'
import { rowLengthMm } from '../rows/rowSet.ts'
import { scanOutline } from '../rows/scanGrid.ts'
import type { Outline } from '../cut/simplify.ts'

/** Area of a rim `brimMm` wide around the outer outlines of the first layer; holes stay open. mm² */
export function brimAreaMm2(first: CutLayer, brimMm: number, grids: Grids): number {
  if (brimMm <= 0) return 0
  const outer = outerOutlines(first.outline)
  const rim = subtractRows(
    scanEdgeBand(outer, brimMm, grids[0], 'both'),
    scanOutline(outer, grids[0]).region,
  )
  return rowLengthMm(rim) * grids[0].pitchMm
}

function outerOutlines(outline: Outline): Outline {
  const points: number[] = []
  const start = [0]
  for (let c = 0; c + 1 < outline.start.length; c++) {
    const begin = outline.start[c]! * 2
    const end = outline.start[c + 1]! * 2
    if (greenArea(outline.points, begin, end) <= 0) continue
    points.push(...outline.points.subarray(begin, end))
    start.push(points.length / 2)
  }
  return { points: new Float64Array(points), start: Int32Array.from(start) }
}
