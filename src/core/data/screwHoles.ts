/** Sizes of the hole tables; one more than the catalogue. */
export type HoleSize = 'M1.6' | 'M2' | 'M2.5' | 'M3' | 'M4' | 'M5'
export type HoleFit = 'fine' | 'medium' | 'coarse'

export interface HoleRow {
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
export const SCREW_HOLES: readonly HoleRow[] = [
  row('M1.6', 0.35, [1.7, 1.8, 2], 1.25),
  row('M2', 0.4, [2.2, 2.4, 2.6], 1.6),
  row('M2.5', 0.45, [2.7, 2.9, 3.1], 2.05),
  row('M3', 0.5, [3.2, 3.4, 3.6], 2.5),
  row('M4', 0.7, [4.3, 4.5, 4.8], 3.3),
  row('M5', 0.8, [5.3, 5.5, 5.8], 4.2),
]

/**
 * What a brass insert is set into, mm. M3–M5: Accu hole charts, accu.co.uk/p/488. M2 and M2.5: the
 * holes of a miniature series.
 */
export const INSERT_HOLES_MM = { M2: 2.6, 'M2.5': 3.15, M3: 4, M4: 5.6, M5: 6.4 } as const
