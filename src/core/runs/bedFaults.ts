import type { Spot } from '../model/runs.ts'
import { sineCosine, turnedBox } from './hull.ts'
import { mirrorOutline } from './mirror.ts'
import type { Bed, LaidPart, PieceOutline } from './types.ts'

/** What is wrong with where a piece lies: over the edge of what may be used, or on another. */
export type BedFault =
  | { readonly at: number; readonly why: 'edge' }
  | { readonly at: number; readonly why: 'overlap'; readonly with: number }

/** Rounding to the tenth of a millimetre, and of files. */
const SLACK_MM = 0.06

/**
 * What is wrong on a bed, by the places of `spots`. Pieces lie on each other where a cell of one
 * lies in the other, brims included: cells reach beyond a piece by at most one of them, so that
 * pieces nearer than 1 mm may be told as touching.
 */
export function bedFaults(
  spots: readonly Spot[],
  pieceOf: (partId: string) => Pick<LaidPart, 'outline' | 'brimMm'> | null,
  { widthMm, depthMm, marginMm }: Bed,
): readonly BedFault[] {
  const lying = spots.flatMap((spot, at) => {
    const piece = pieceOf(spot.partId)
    if (piece === null) return []
    const outline = spot.mirrored === true ? mirrorOutline(piece.outline) : piece.outline
    const box = turnedBox(outline.hullMm, spot.turnDeg)
    const { brimMm } = piece
    const left = spot.xMm + box.minX - brimMm
    const low = spot.yMm + box.minY - brimMm
    const right = left + box.widthMm + 2 * brimMm
    const top = low + box.depthMm + 2 * brimMm
    return [{ at, spot, outline, brimMm, left, low, right, top }]
  })
  const faults: BedFault[] = []
  for (const [i, a] of lying.entries()) {
    const isOver =
      a.left < marginMm - SLACK_MM ||
      a.low < marginMm - SLACK_MM ||
      a.right > widthMm - marginMm + SLACK_MM ||
      a.top > depthMm - marginMm + SLACK_MM
    if (isOver) faults.push({ at: a.at, why: 'edge' })
    for (const b of lying.slice(i + 1)) {
      if (a.right < b.left || b.right < a.left || a.top < b.low || b.top < a.low) continue
      if (overlaps(a, b)) faults.push({ at: a.at, why: 'overlap', with: b.at })
    }
  }
  return faults
}

interface Lying {
  readonly spot: Spot
  readonly outline: PieceOutline
  readonly brimMm: number
}

/** Whether the middle of a cell of one lies within both brims of a cell of the other. */
function overlaps(a: Lying, b: Lying): boolean {
  const [small, large] =
    a.outline.cells.length <= b.outline.cells.length ? [a, b] : ([b, a] as const)
  const reachMm = a.brimMm + b.brimMm
  const { across, down, cells, cellMm, fromMm } = small.outline
  const toBed = sineCosine(small.spot.turnDeg)
  const back = sineCosine(large.spot.turnDeg)
  for (let row = 0; row < down; row++) {
    for (let column = 0; column < across; column++) {
      if (cells[row * across + column] !== 1) continue
      const px = fromMm[0] + (column + 0.5) * cellMm
      const py = fromMm[1] + (row + 0.5) * cellMm
      const x = small.spot.xMm + toBed[1] * px - toBed[0] * py - large.spot.xMm
      const y = small.spot.yMm + toBed[0] * px + toBed[1] * py - large.spot.yMm
      const own = [back[1] * x + back[0] * y, back[1] * y - back[0] * x] as const
      if (isNear(large.outline, own, reachMm)) return true
    }
  }
  return false
}

/**
 * Whether a point in the axes of a piece lies in one of its cells, or within `reachMm` of one's
 * middle.
 */
function isNear(
  { across, down, cells, cellMm, fromMm }: PieceOutline,
  [x, y]: readonly [number, number],
  reachMm: number,
): boolean {
  const column = Math.floor((x - fromMm[0]) / cellMm)
  const row = Math.floor((y - fromMm[1]) / cellMm)
  const most = Math.ceil(reachMm / cellMm)
  for (let r = Math.max(0, row - most); r <= Math.min(down - 1, row + most); r++) {
    for (let c = Math.max(0, column - most); c <= Math.min(across - 1, column + most); c++) {
      if (cells[r * across + c] !== 1) continue
      const dx = (c - column) * cellMm
      const dy = (r - row) * cellMm
      if (dx * dx + dy * dy <= reachMm * reachMm) return true
    }
  }
  return false
}
