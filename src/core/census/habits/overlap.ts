import type { Laying } from '../areas/laying.ts'
import type { CutLayer, Grids } from '../cut/cutLayer.ts'
import { insetOf } from '../cut/cutLayer.ts'
import { sharedLengthMm } from '../rows/rowAlgebra.ts'
import type { RowSet } from '../rows/rowSet.ts'
import { rowLengthMm } from '../rows/rowSet.ts'

/** Depth of the rim by which the walls' inner edge is measured where lines do not fit. Lines. */
const RIM_LINES = 0.25

/** mm² */
export interface Overlap {
  readonly skinMm2: number
  readonly roomMm2: number
}

/**
 * Skin and infill that lie over the innermost wall line: its inner edge times the overlap, shared
 * as skin and room share the edge. `innerMm` is the edge's length where it is known.
 *
 * Measured: layers of solid skin of three authors lay 1 to 4 % more than their area, 0.2 to 0.35 of
 * a line along that edge; a tenth of a line is what the plates among 27 toolpaths agree with best
 * together with the other habits as they are. Where what the walls leave is narrower than a line
 * there are fewer ends to reach over: a ring 4.1 lines wide was laid without any, for +4.8 % here
 * before.
 */
export function overlapsOf(
  layer: CutLayer,
  inside: RowSet,
  room: RowSet,
  innerMm: number | null,
  along: 0 | 1,
  { wallMm, lineMm, overlapMm }: Laying,
  grids: Grids,
): Overlap {
  if (overlapMm <= 0) return { skinMm2: 0, roomMm2: 0 }
  const scaleMm2 = layer.correction[along] * grids[along].pitchMm
  if (innerMm !== null) {
    const ofRoom = sharedEnds(inside, room)
    const full = Math.max(0, innerMm) * overlapMm
    const both = full * widthShare(rowLengthMm(inside) * scaleMm2, innerMm, lineMm)
    return { skinMm2: both * (1 - ofRoom), roomMm2: both * ofRoom }
  }
  const rimMm = RIM_LINES * lineMm
  const deeper = insetOf(layer, along, wallMm + rimMm, grids)
  const all = rowLengthMm(inside) - rowLengthMm(deeper)
  const ofRoom = rowLengthMm(room) - sharedLengthMm(room, deeper)
  const edgeMm = (all * scaleMm2) / rimMm
  const wide = widthShare(rowLengthMm(inside) * scaleMm2, edgeMm, lineMm)
  const scale = (scaleMm2 * overlapMm * wide) / rimMm
  return { skinMm2: Math.max(0, all - ofRoom) * scale, roomMm2: ofRoom * scale }
}

/**
 * Share of the edge that lines end on: all where the inside is a line wide or more, in the mean.
 */
function widthShare(insideMm2: number, edgeMm: number, lineMm: number): number {
  return edgeMm > 0 ? Math.min(1, (2 * insideMm2) / (edgeMm * lineMm)) : 1
}

/** Share of a region's stretch ends that are ends of a part of it too. */
function sharedEnds(region: RowSet, part: RowSet): number {
  if (region.spans.length === 0 || part.spans.length === 0) return 0
  let shared = 0
  for (let row = 0; row + 1 < region.start.length; row++) {
    let j = 2 * part.start[row]!
    const jEnd = 2 * part.start[row + 1]!
    for (let i = 2 * region.start[row]!; i < 2 * region.start[row + 1]!; i++) {
      while (j < jEnd && part.spans[j]! < region.spans[i]!) j++
      const end = region.spans[i]!
      if (j < jEnd && part.spans[j] === end) shared++
    }
  }
  return shared / region.spans.length
}
