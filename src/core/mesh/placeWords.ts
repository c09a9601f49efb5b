import type { Finding } from '../model/mesh.ts'
import { formatNumber } from '../words/format.ts'
import { shownOf, shownAs } from '../words/shownUnits.ts'

/**
 * Where a finding is, in a sentence with the middle of its place in the drawing's own axes; empty
 * where it has none.
 */
export function placeWords({ place }: Finding, locale?: string): string {
  if (place === undefined) return ''
  const middle = [0, 1, 2].map((k) => (place.min[k]! + place.max[k]!) / 2)
  const as = shownAs('mm')
  const [x, y, z] = middle.map((mm) => formatNumber(shownOf(mm, as), locale, 2 + as.finer))
  return ` In the drawing: at x ${x}, y ${y}, z ${z} ${as.label}.`
}
