import type { Vec3 } from '../model/mesh.ts'

/**
 * Whether a part's box fits the printer, and how it has to be turned on the bed for it. Angles in
 * degrees, lengths in mm.
 */
export type BedFit =
  /** As it lies, or by a quarter turn. */
  | { readonly kind: 'fits' }
  /** Only turned, somewhere between these angles off the bed's longer side. */
  | { readonly kind: 'turned'; readonly fromDeg: number; readonly toDeg: number }
  | { readonly kind: 'too-tall' | 'too-long'; readonly partMm: number; readonly limitMm: number }

/**
 * Rounding of coordinates in a file must not turn a part away: 0.01 mm is far below what a printer
 * holds.
 */
const SLACK_MM = 0.01

/**
 * @param sizeMm of the part's box as it lies on the bed.
 * @param bedMm width, depth and height the printer reaches.
 * @param rimMm kept free all round the part, for a brim.
 */
export function bedFit(sizeMm: Vec3, bedMm: Vec3, rimMm = 0): BedFit {
  const tall = sizeMm[2]
  if (tall > bedMm[2] + SLACK_MM) {
    return { kind: 'too-tall', partMm: tall, limitMm: bedMm[2] }
  }
  const [q, p] = inOrder(sizeMm[0] + 2 * rimMm, sizeMm[1] + 2 * rimMm)
  const [b, a] = inOrder(bedMm[0] + SLACK_MM, bedMm[1] + SLACK_MM)
  if (p <= a && q <= b) return { kind: 'fits' }
  const tooLong = {
    kind: 'too-long',
    partMm: p > a ? p : q,
    limitMm: (p > a ? a : b) - SLACK_MM,
  } as const
  // A rectangle p × q (p ≥ q) turned by t reaches p cos t + q sin t and p sin t + q cos t; both
  // have to stay within a and b.
  const diagonal = Math.hypot(p, q)
  if (p <= a || q > b || diagonal < a) return tooLong
  const slant = Math.atan2(q, p)
  const from = slant + Math.acos(a / diagonal)
  const to = Math.asin(Math.min(1, b / diagonal)) - slant
  if (from > to) return tooLong
  return { kind: 'turned', fromDeg: degrees(from), toDeg: degrees(to) }
}

function inOrder(one: number, other: number): readonly [smaller: number, larger: number] {
  return one < other ? [one, other] : [other, one]
}

function degrees(radians: number): number {
  return (radians * 180) / Math.PI
}
