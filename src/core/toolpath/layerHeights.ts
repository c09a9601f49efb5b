/** Heights nearer than this are one. mm */
const SAME_MM = 0.005

/**
 * Tells how thick layers are from the heights they are laid at, in any order: several objects, one
 * after the other, come down again.
 */
export function layerHeights(): (topMm: number) => number {
  const tops: number[] = []
  return (topMm) => {
    let below = 0
    for (let k = tops.length - 1; k >= 0; k--) {
      if (tops[k]! < topMm - SAME_MM) {
        below = tops[k]!
        break
      }
    }
    let at = tops.length
    while (at > 0 && tops[at - 1]! > topMm + SAME_MM) at--
    if (at === 0 || Math.abs(tops[at - 1]! - topMm) > SAME_MM) tops.splice(at, 0, topMm)
    return topMm - below
  }
}
