import type { WingSetup } from '../../model/aircraft.ts'

/** Where a plane balances along its mean chord. */
export interface WingBalance {
  /** Centre of gravity behind the leading edge of the mean chord. mm */
  readonly behindMm: number
  /** The same as a share of the chord. */
  readonly chordShare: number
  readonly verdict: 'nose-heavy' | 'inside' | 'tail-heavy'
  /**
   * How far the centre of gravity must go to reach the nearest end of the range; forward positive,
   * 0 inside.
   */
  readonly shiftMm: number
  readonly words: string
}

/**
 * Judges a centre of gravity at `cgXMm` (frame axis, forward positive) against the wing's typed
 * range.
 */
export function wingBalance(wing: WingSetup, cgXMm: number): WingBalance {
  const [low, high] = wing.balanceMm
  const behindMm = wing.leadingEdgeMm - cgXMm
  const at = `${behindMm.toFixed(1)} mm behind the leading edge`
  const range = `${low.toFixed(0)} to ${high.toFixed(0)} mm`
  const chordShare = wing.meanChordMm > 0 ? behindMm / wing.meanChordMm : 0
  if (behindMm > high) {
    const words =
      `It balances ${at}, behind the range of ${range}: tail-heavy, and not safe to fly. ` +
      'Move the pack forward or add nose weight.'
    return { behindMm, chordShare, verdict: 'tail-heavy', shiftMm: behindMm - high, words }
  }
  if (behindMm < low) {
    const words = `It balances ${at}, ahead of the range of ${range}: nose-heavy. Move the pack back.`
    return { behindMm, chordShare, verdict: 'nose-heavy', shiftMm: behindMm - low, words }
  }
  const words = `It balances ${at}, inside the range of ${range}.`
  return { behindMm, chordShare, verdict: 'inside', shiftMm: 0, words }
}

/**
 * Mass (g) at `weightXMm` that moves the centre of gravity of `massG` by `shiftMm`, forward
 * positive: m Δx over the arm, the arm reaching from the wanted balance point to the weight. Null
 * where a weight there cannot do it.
 */
export function trimWeightG(
  massG: number,
  cgXMm: number,
  shiftMm: number,
  weightXMm: number,
): number | null {
  if (shiftMm === 0) return 0
  const weight = (massG * shiftMm) / (weightXMm - (cgXMm + shiftMm))
  return Number.isFinite(weight) && weight >= 0 ? weight : null
}

/**
 * How far a pack of `packG`, already in `massG`, must slide to move the balance point by `shiftMm`.
 * mm, forward positive.
 */
export function packSlideMm(massG: number, shiftMm: number, packG: number): number | null {
  return packG > 0 ? (massG * shiftMm) / packG : null
}

/** Where a nose weight sits while nobody typed where, forward of the middle: no plane's own. mm */
const NOSE_MM = 200

/** Where a nose weight would sit, forward of the middle. mm */
export function noseMmOf({ noseMm = NOSE_MM }: Pick<WingSetup, 'noseMm'>): number {
  return noseMm
}
