import { SCREW_HOLES, type HoleFit, type HoleRow, type HoleSize } from '../../data/screwHoles.ts'

const FITS: readonly HoleFit[] = ['fine', 'medium', 'coarse']

export function clearanceHoleMm(size: HoleSize, fit: HoleFit): number {
  return holeRow(size).clearanceMm[fit]
}

export function tapDrillMm(size: HoleSize): number {
  return holeRow(size).tappingMm
}

/** Minor diameter d − 1.0825·P (ISO 724). mm */
export function minorDiameterMm(size: HoleSize): number {
  const { nominalMm, pitchMm } = holeRow(size)
  return nominalMm - 1.0825 * pitchMm
}

export interface HoleReading {
  /** "M3 medium", "between fine and medium of M3", "M3 tapping drill", … */
  readonly text: string
  /** What else the same diameter could be. */
  readonly also: readonly string[]
  /** Largest size that passes through; null when none of the table does. */
  readonly passes: HoleSize | null
}

/**
 * What a hole is for, by its diameter in mm, rounded to 0.01: first an exact clearance hole; then
 * the clearance of the largest screw not thicker than the hole; then an exact tapping drill; else
 * why it is none of these.
 */
export function classifyHole(diameterMm: number): HoleReading {
  const holeMm = Math.round(diameterMm * 100) / 100
  const readings = [
    ...SCREW_HOLES.map((hole) => exactClearance(hole, holeMm)),
    clearanceOfLargest(holeMm),
    ...SCREW_HOLES.map((hole) => (hole.tappingMm === holeMm ? `${hole.size} tapping drill` : null)),
    missed(holeMm),
    ...SCREW_HOLES.map((hole) => between(hole, holeMm)),
  ].filter((text) => text !== null)
  const [text = '', ...also] = [...new Set(readings)]
  return {
    text,
    also,
    passes: SCREW_HOLES.findLast((hole) => holeMm >= hole.clearanceMm.fine)?.size ?? null,
  }
}

function holeRow(size: HoleSize): HoleRow {
  const found = SCREW_HOLES.find((hole) => hole.size === size)
  if (!found) throw new RangeError(`No hole table row for ${size}`)
  return found
}

function exactClearance(hole: HoleRow, holeMm: number): string | null {
  const fit = FITS.find((one) => hole.clearanceMm[one] === holeMm)
  return fit ? `${hole.size} ${fit}` : null
}

function between(hole: HoleRow, holeMm: number): string | null {
  const { fine, medium, coarse } = hole.clearanceMm
  if (holeMm <= fine || holeMm >= coarse || holeMm === medium) return null
  return holeMm < medium
    ? `between fine and medium of ${hole.size}`
    : `between medium and coarse of ${hole.size}`
}

function largestNotThicker(holeMm: number): HoleRow | undefined {
  return SCREW_HOLES.findLast((hole) => hole.nominalMm <= holeMm)
}

function clearanceOfLargest(holeMm: number): string | null {
  const hole = largestNotThicker(holeMm)
  return hole ? between(hole, holeMm) : null
}

/**
 * Why a hole is no clearance hole of the largest screw not thicker than it; null when it is one.
 */
function missed(holeMm: number): string | null {
  const hole = largestNotThicker(holeMm)
  if (!hole) return 'too small for M1.6 clearance'
  if (holeMm < hole.clearanceMm.fine) {
    return `too small for ${hole.size} clearance, too big for ${hole.size} tapping`
  }
  return holeMm > hole.clearanceMm.coarse ? `wider than coarse of ${hole.size}` : null
}
