import type { Laying } from '../areas/laying.ts'
import type { CutLayer, Grids } from '../cut/cutLayer.ts'
import { insetOf } from '../cut/cutLayer.ts'
import { measureOutline } from '../cut/measureOutline.ts'
import { rowLengthMm } from '../rows/rowSet.ts'

/** Plastic of the wall lines of a layer, mm². */
export interface LaidWalls {
  readonly wallMm2: number
  /** The part of it that lies in gap lines. */
  readonly gapMm2: number
  /** How far they lie from filling what is too thin for all lines, more or less. */
  readonly thinMm2: number
  /** Length of the innermost line's inner edge; null where some lines do not fit. mm */
  readonly innerMm: number | null
}

/**
 * Walls that take up this much less than they would with room for all lines have places too thin
 * for them. Share.
 */
const WORTH_LOOKING = 0.01
/** Half the span over which the length of an inset outline is taken, in lines. */
const SPAN_LINES = 0.05

/**
 * Walls laid as whole lines. Of a wall t lines thick, told from either side:
 *
 * - below `oneLineBelow` (1.6) one line runs along its middle; above that two, which overlap up to
 *   2;
 * - what is left between two lines is laid as one gap line of its own width, or left open; from 1.6
 *   lines on as two lines more;
 * - and so on, as many pairs as the recipe has walls.
 *
 * No middle line is drawn for that. With P(d) the length of the outline inset by d, which falls to
 * nothing where a wall is 2·d thick, walls thicker than 2·d are P(d)/2 long: every threshold of the
 * rule is one such length, and a gap is the area that is left between two. Corners shorten P(d) as
 * well, by a length that is known from their angles and put back.
 *
 * With round ends a gap line lacks what any line does, and as much again stays bare between it and
 * the lines on either side, which do not lie closer for it: of gaps of 0.77 mm at 0.2 mm layers and
 * 0.79 at 0.3, 0.63 and 0.65 mm were laid; 0.68 and 0.66 here.
 *
 * Where all lines fit, which most layers are, it is the region within the walls' depth, less the
 * strip that round ends leave bare along the outline.
 *
 * Measured on 27 toolpaths, against the bare region: a thin-walled pod came from +6.4 % to +5.2 %,
 * two plates of thin ribs from +0.0 % to +0.7 %, a clip of thin prongs from −1.8 % to −0.2 %; no
 * other moved by more than 0.3 %.
 */
export function layWalls(
  layer: CutLayer,
  regionMm2: number,
  { walls, wallMm, lineMm, bareMm, habits }: Laying,
  grids: Grids,
): LaidWalls {
  const { lengthMm, corners, crossed } = measureOutline(layer.outline)
  const wholeMm2 = regionMm2 - bareMm * (lengthMm - layer.hiddenMm)
  const roomyMm2 = wallMm * lengthMm - (corners * wallMm * wallMm) / 2
  const roomy = layer.upright && regionMm2 >= (1 - WORTH_LOOKING) * roomyMm2
  const innerMm = roomy ? lengthMm - corners * wallMm : null
  if (roomy || walls === 0 || habits.thinWalls === 'varied' || !layer.upright) {
    return { wallMm2: Math.max(0, wholeMm2), gapMm2: 0, thinMm2: 0, innerMm }
  }

  // Rows that walls run along tell little of lengths: a rim of a twentieth of a line falls between
  // two of them.
  const scale = layer.correction[crossed] * grids[crossed].pitchMm
  const areaAt = (lines: number): number =>
    rowLengthMm(insetOf(layer, crossed, bareMm + lines * lineMm, grids)) * scale
  const half = habits.oneLineBelow / 2
  let totalMm = 0
  let gapMm2 = 0
  for (let pair = 0; pair < walls; pair++) {
    const at = pair + half
    const before = areaAt(at - SPAN_LINES)
    const after = areaAt(at + SPAN_LINES)
    const roundMm = (before - after) / (2 * SPAN_LINES * lineMm)
    // Corners of what is still there at that depth.
    const left = lengthMm > 0 ? Math.min(1, roundMm / lengthMm) * corners * lineMm : 0
    if (pair === 0) {
      totalMm += (lengthMm + roundMm) / 2 - (0.5 - half / 2) * left
      continue
    }
    totalMm += roundMm + (half - 0.5) * left
    if (!habits.gapLines) continue
    const between = areaAt(pair) - (before + after) / 2
    let bareGapMm2 = 0
    if (bareMm > 0) {
      const lostMm2 = areaAt(pair) - areaAt(pair + 2 * SPAN_LINES)
      bareGapMm2 = 2 * bareMm * Math.max(0, lostMm2 / (2 * SPAN_LINES * lineMm) - roundMm)
    }
    const open = between - half * lineMm * (roundMm + (half / 2) * left)
    gapMm2 += Math.max(0, open - bareGapMm2)
  }
  const wallMm2 = totalMm * lineMm + gapMm2
  return { wallMm2, gapMm2, thinMm2: Math.abs(wholeMm2 - wallMm2), innerMm }
}
