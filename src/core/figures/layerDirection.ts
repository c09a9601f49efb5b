import type { Bounds } from '../model/mesh.ts'

/**
 * Strength between layers as a share of strength within them: 0.55 ± 0.15, from makers' pages that
 * give 0.5–0.7 for PLA and 0.2–0.6 over materials and settings (weak sources; a coupon of the same
 * spool tells more).
 */
const BETWEEN_LAYERS = { value: 0.55, spread: 0.15 } as const

/** Longer than this × the next side, a part bends like a beam. */
const SLENDER = 1.8

/**
 * What the way it lies does to the strength of a long part; null for a compact one.
 *
 * @param boundsMm of the part as it lies on the bed.
 */
export function layerDirectionNote({ min, max }: Bounds): string | null {
  const [x, y, z] = [max[0] - min[0], max[1] - min[1], max[2] - min[2]]
  const flat = Math.max(x, y)
  const { value, spread } = BETWEEN_LAYERS
  const share =
    `about ${Math.round(100 * value)} % ` +
    `(${Math.round(100 * (value - spread))}–${Math.round(100 * (value + spread))} %)`
  if (z > SLENDER * flat) {
    return (
      'It stands upright: its layers lie across its length, and bending pulls them apart. ' +
      `Between layers it holds ${share} of what it holds along them, so an arm printed like this is ` +
      'weak. Lay it flat if it carries load, and load-test a spare by hand.'
    )
  }
  if (flat > SLENDER * Math.min(x, y) && flat > SLENDER * z) {
    return (
      'It lies flat: its layers run along its length and carry the bending. ' +
      `Across them it holds ${share} of that, so keep bolts and blows from prising layers apart.`
    )
  }
  return null
}
