import { greenArea } from '../cut/contours.ts'
import type { CutLayer, Grids } from '../cut/cutLayer.ts'
import { scanEdgeBand } from '../rows/edgeBand.ts'
import { subtractRows } from '../rows/rowAlgebra.ts'
import { rowLengthMm } from '../rows/rowSet.ts'
import { scanOutline } from '../rows/scanGrid.ts'
import type { Outline } from '../cut/simplify.ts'

/**
 * Area of a rim `brimMm` wide around the outer outlines of the first layer; holes stay open. mm²
 */
export function brimAreaMm2(first: CutLayer, brimMm: number, grids: Grids): number {
  if (brimMm <= 0) return 0
  const outer = outerOutlines(first.outline)
  const rim = subtractRows(
    scanEdgeBand(outer, brimMm, grids[0]),
    scanOutline(outer, grids[0]).region,
  )
  return rowLengthMm(rim) * grids[0].pitchMm
}

function outerOutlines({ points, start }: Outline): Outline {
  const kept: Float64Array[] = []
  const keptStart = [0]
  let length = 0
  for (let c = 0; c + 1 < start.length; c++) {
    const begin = start[c]! * 2
    const end = start[c + 1]! * 2
    if (greenArea(points, begin, end) <= 0) continue
    kept.push(points.subarray(begin, end))
    length += end - begin
    keptStart.push(length / 2)
  }
  const outer = new Float64Array(length)
  // One by one: an outline may have more points than a call takes arguments.
  for (const [i, some] of kept.entries()) outer.set(some, 2 * keptStart[i]!)
  return { points: outer, start: Int32Array.from(keptStart) }
}
