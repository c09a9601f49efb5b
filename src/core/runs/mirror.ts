import type { PieceOutline } from './types.ts'

/** The same object again, so that what is made of it is found again. */
const mirrors = new WeakMap<PieceOutline, PieceOutline>()

/** The outline of a mirrored copy: x to the other side. */
export function mirrorOutline(outline: PieceOutline): PieceOutline {
  const known = mirrors.get(outline)
  if (known) return known
  const { across, down, cells, cellMm, fromMm, hullMm } = outline
  const flipped = new Uint8Array(cells.length)
  for (let row = 0; row < down; row++) {
    flipped.set(cells.subarray(row * across, (row + 1) * across).toReversed(), row * across)
  }
  const made: PieceOutline = {
    ...outline,
    cells: flipped,
    fromMm: [-fromMm[0] - across * cellMm, fromMm[1]],
    hullMm: hullMm.map((value, i) => (i % 2 === 0 ? -value : value)),
  }
  mirrors.set(outline, made)
  return made
}
