import type { Outline } from './simplify.ts'

/** Outlines beyond this many are visited in file order: looking for the nearest each time grows with the square. */
const MOST_SORTED = 400

/** Lengths of the hops from outline to outline, always to the nearest not yet visited. mm */
export function outlineHops(outline: Outline): Float64Array {
  const count = outline.start.length - 1
  const hops = new Float64Array(Math.max(0, count - 1))
  const u = (c: number): number => outline.points[2 * outline.start[c]!]!
  const v = (c: number): number => outline.points[2 * outline.start[c]! + 1]!
  const left = [...Array(count).keys()].slice(1)
  let here = 0
  for (let hop = 0; hop < hops.length; hop++) {
    let best = 0
    let bestMm = Infinity
    const search = count > MOST_SORTED ? 1 : left.length
    for (let i = 0; i < search; i++) {
      const mm = Math.hypot(u(left[i]!) - u(here), v(left[i]!) - v(here))
      if (mm < bestMm) {
        bestMm = mm
        best = i
      }
    }
    hops[hop] = bestMm
    here = left[best]!
    left[best] = left[left.length - 1]!
    left.pop()
  }
  return hops
}
