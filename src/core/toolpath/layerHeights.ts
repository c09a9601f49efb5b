import { PreweighError } from '../model/problem.ts'

/** Heights nearer than this are one. mm */
const SAME_MM = 0.005
/** Of no print; each is remembered. */
const MOST_HEIGHTS = 200_000

/**
 * Tells how thick layers are from the heights they are laid at, in any order: several objects, one
 * after the other, come down again. Throws PreweighError where there are more than any print has.
 */
export function layerHeights(): (topMm: number) => number {
  const tops: number[] = []
  /** How many of them lie below. */
  const below = (heightMm: number): number => {
    let [from, to] = [0, tops.length]
    while (from < to) {
      const middle = (from + to) >> 1
      if (tops[middle]! < heightMm) from = middle + 1
      else to = middle
    }
    return from
  }
  return (topMm) => {
    const lower = below(topMm - SAME_MM)
    const at = below(topMm + SAME_MM)
    if (at === 0 || Math.abs(tops[at - 1]! - topMm) > SAME_MM) tops.splice(at, 0, topMm)
    if (tops.length > MOST_HEIGHTS) throw tooMany()
    return topMm - (lower === 0 ? 0 : tops[lower - 1]!)
  }
}

function tooMany(): PreweighError {
  return new PreweighError(
    'too-large',
    `The file lays lines at more than ${MOST_HEIGHTS} heights, which no print has.`,
    'Give the file that the printer is sent, of one print.',
  )
}
