/** Sizes of the hole tables; one more than the catalogue. */
export type HoleSize = 'M1.6' | 'M2' | 'M2.5' | 'M3' | 'M4' | 'M5'
export type HoleFit = 'fine' | 'medium' | 'coarse'

interface HoleRow {
  readonly size: HoleSize
  readonly nominalMm: number
  readonly pitchMm: number
  readonly clearanceMm: Readonly<Record<HoleFit, number>>
  readonly tappingMm: number
}

const row = (
  size: HoleSize,
  pitchMm: number,
  clearance: readonly [fine: number, medium: number, coarse: number],
  tappingMm: number,
): HoleRow => ({
  size,
  nominalMm: Number(size.slice(1)),
  pitchMm,
  clearanceMm: { fine: clearance[0], medium: clearance[1], coarse: clearance[2] },
  tappingMm,
})

/**
 * Clearance holes ISO 273 (fine H12, medium H13, coarse H14): engineeringhardware.com/?p=50 and a
 * drawing table, in agreement. Tapping drills for 75 % of thread: nightshade.net and
 * utilitiesbunker.com charts, in agreement (basis ISO 2306).
 */
const HOLES: readonly HoleRow[] = [
  row('M1.6', 0.35, [1.7, 1.8, 2], 1.25),
  row('M2', 0.4, [2.2, 2.4, 2.6], 1.6),
  row('M2.5', 0.45, [2.7, 2.9, 3.1], 2.05),
  row('M3', 0.5, [3.2, 3.4, 3.6], 2.5),
  row('M4', 0.7, [4.3, 4.5, 4.8], 3.3),
  row('M5', 0.8, [5.3, 5.5, 5.8], 4.2),
]

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
    ...HOLES.map((hole) => exactClearance(hole, holeMm)),
    clearanceOfLargest(holeMm),
    ...HOLES.map((hole) => (hole.tappingMm === holeMm ? `${hole.size} tapping drill` : null)),
    missed(holeMm),
    ...HOLES.map((hole) => between(hole, holeMm)),
  ].filter((text) => text !== null)
  const [text = '', ...also] = [...new Set(readings)]
  return {
    text,
    also,
    passes: HOLES.findLast((hole) => holeMm >= hole.clearanceMm.fine)?.size ?? null,
  }
}

function holeRow(size: HoleSize): HoleRow {
  const found = HOLES.find((hole) => hole.size === size)
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
  return HOLES.findLast((hole) => hole.nominalMm <= holeMm)
}

function clearanceOfLargest(holeMm: number): string | null {
  const hole = largestNotThicker(holeMm)
  return hole ? between(hole, holeMm) : null
}

/** Why a hole is no clearance hole of the largest screw not thicker than it; null when it is one. */
function missed(holeMm: number): string | null {
  const hole = largestNotThicker(holeMm)
  if (!hole) return 'too small for M1.6 clearance'
  if (holeMm < hole.clearanceMm.fine) {
    return `too small for ${hole.size} clearance, too big for ${hole.size} tapping`
  }
  return holeMm > hole.clearanceMm.coarse ? `wider than coarse of ${hole.size}` : null
}
