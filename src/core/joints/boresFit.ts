import { INSERT_HOLES_MM, SCREW_HOLES } from '../data/screwHoles.ts'
import type { BoreMark } from '../model/joints.ts'

/**
 * Drawn or printed, a bore may be off what it is meant for by this. mm (common practice, no source)
 */
const PLAY_MM = 0.3
/**
 * A shaft may be this much thicker than its bore, pressed in, or this much thinner. mm (common
 * practice, no source)
 */
const PRESS_MM = 0.25
const LOOSE_MM = 0.6

/** A tube or a pin goes through both of two equal bores; thinner ones are for screws. mm */
const TUBE_MM = 4

/** What one bore or peg could be for; two are held against each other many times. */
export interface BorePurpose {
  readonly isPeg: boolean
  readonly diameterMm: number
  /**
   * A bit for each screw of ISO 273 that goes through, and for each that holds: tapped, or in an
   * insert.
   */
  readonly passes: number
  readonly holds: number
}

export function purposeOf({ kind, diameterMm }: BoreMark): BorePurpose {
  let passes = 0
  let holds = 0
  SCREW_HOLES.forEach(({ size, nominalMm, clearanceMm, tappingMm }, place) => {
    const insertMm = size === 'M1.6' ? Infinity : INSERT_HOLES_MM[size]
    const isTapped = diameterMm >= tappingMm - PLAY_MM && diameterMm < nominalMm
    if (diameterMm >= nominalMm && diameterMm <= clearanceMm.coarse + PLAY_MM) passes |= 1 << place
    if (isTapped || Math.abs(diameterMm - insertMm) <= PLAY_MM) holds |= 1 << place
  })
  return { isPeg: kind === 'peg', diameterMm, passes, holds }
}

/**
 * By diameter alone: a screw of ISO 273 that passes one of two bores and passes or holds in the
 * other; one tube through both; a shaft in its bore.
 */
export function purposesFit(a: BorePurpose, b: BorePurpose): boolean {
  if (a.isPeg || b.isPeg) {
    if (a.isPeg && b.isPeg) return false
    return a.isPeg ? shaftFits(a.diameterMm, b.diameterMm) : shaftFits(b.diameterMm, a.diameterMm)
  }
  if ((a.passes & (b.passes | b.holds)) !== 0 || (b.passes & a.holds) !== 0) return true
  const isTube = a.diameterMm >= TUBE_MM && b.diameterMm >= TUBE_MM
  return isTube && Math.abs(a.diameterMm - b.diameterMm) <= PLAY_MM
}

export const boresFit = (a: BoreMark, b: BoreMark): boolean =>
  purposesFit(purposeOf(a), purposeOf(b))

const shaftFits = (shaftMm: number, boreMm: number): boolean =>
  shaftMm <= boreMm + PRESS_MM && shaftMm >= boreMm - LOOSE_MM
