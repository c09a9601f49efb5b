import { pathOf, simplifyLine } from './chain.ts'
import type { Painted } from './paint.ts'

/** A staircase of samples turns into a line when it stays this near. samples */
const TOLERANCE = 0.75

/**
 * The areas of equal label as closed SVG paths in px, one text a label; fill them even-odd.
 *
 * Every side between two samples of different label is walked once for each of them, the label on
 * the walk's right, so that the loops of a label enclose just its samples; then steps are
 * straightened.
 */
export function traceRegions({
  width,
  height,
  samples,
  label,
}: Painted): ReadonlyMap<number, string> {
  const paths = new Map<number, string>()
  // For each corner and heading (0 right, 1 down, 2 left, 3 up): whether a side that starts there
  // was walked already.
  const across = width + 1
  const walked = new Uint8Array(across * (height + 1))

  for (let row = 0; row < height; row++) {
    for (let column = 0; column < width; column++) {
      const own = label[row * width + column]!
      if (own === 0 || (row > 0 && label[(row - 1) * width + column] === own)) continue
      // A top side, walked to the right with the label below it.
      const start = row * across + column
      if ((walked[start]! & 1) === 1) continue
      const loop = walkLoop(own, column, row)
      const line = simplifyLine(loop, TOLERANCE)
      if (line.length < 6) continue
      const px = line.map((value) => value / samples)
      paths.set(own, (paths.get(own) ?? '') + pathOf(px, true))
    }
  }
  return paths

  function walkLoop(own: number, column: number, row: number): number[] {
    const points: number[] = []
    let c = column
    let r = row
    let heading = 0
    do {
      if (heading === 0) walked[r * across + c]! |= 1
      points.push(c, r)
      c += heading === 0 ? 1 : heading === 2 ? -1 : 0
      r += heading === 1 ? 1 : heading === 3 ? -1 : 0
      // Ahead of the corner: the sample on the left and the one on the right of the way.
      const leftSample = ahead(c, r, heading, -1)
      const rightSample = ahead(c, r, heading, 0)
      if (rightSample !== own) heading = (heading + 1) & 3
      else if (leftSample === own) heading = (heading + 3) & 3
    } while (c !== column || r !== row || heading !== 0)
    points.push(column, row)
    return points
  }

  function at(column: number, row: number): number {
    return column < 0 || row < 0 || column >= width || row >= height
      ? 0
      : label[row * width + column]!
  }

  /** The sample beyond corner (c, r) in the heading, on its left (−1) or right (0). */
  function ahead(c: number, r: number, heading: number, side: -1 | 0): number {
    switch (heading) {
      case 0:
        return at(c, r + side)
      case 1:
        return at(c - 1 - side, r)
      case 2:
        return at(c - 1, r - 1 - side)
      default:
        return at(c + side, r - 1)
    }
  }
}
