import { INSERT_HOLES_MM } from '../../data/screwHoles.ts'
import type { SourceMark, Sourced } from '../../model/figures.ts'
import type { HardwareMaterial, MetricSize, NutStandard, ScrewStandard } from './types.ts'

/*
 * Dimensions are nominal or the standard's maximum, in mm, and were read unless a comment says
 * otherwise. Sizes a standard does not have are left out of its table.
 */

type BySize<T> = Readonly<Partial<Record<MetricSize, T>>>

/** Coarse threads. Diameter and pitch as in ISO 261; both were read in two metric hole charts. */
export const THREADS: Readonly<
  Record<MetricSize, { readonly diameterMm: number; readonly pitchMm: number }>
> = {
  M2: { diameterMm: 2, pitchMm: 0.4 },
  'M2.5': { diameterMm: 2.5, pitchMm: 0.45 },
  M3: { diameterMm: 3, pitchMm: 0.5 },
  M4: { diameterMm: 4, pitchMm: 0.7 },
  M5: { diameterMm: 5, pitchMm: 0.8 },
}

const RECALLED = 'handbook value from memory, not read'
const density = (mark: SourceMark, value: number, source: string): Sourced => ({
  value,
  mark,
  source,
})

/**
 * g/cm³. The published mass tables of steel fasteners state 7.85 themselves; the others are
 * handbook values from memory.
 */
export const DENSITIES: Readonly<Record<HardwareMaterial, Sourced>> = {
  steel: density('read', 7.85, 'stated in the fasten.it and fullerfasteners.com mass tables'),
  stainless: density('memory', 7.9, `A2 stainless, ${RECALLED}`),
  titanium: density('memory', 4.43, `titanium 6Al-4V, ${RECALLED}`),
  aluminium: density('memory', 2.7, `aluminium 6061, ${RECALLED}`),
  'aluminium-7075': density('memory', 2.81, `aluminium 7075, ${RECALLED}`),
  brass: density('memory', 8.47, `brass CW614N, ${RECALLED}`),
  nylon: density('memory', 1.14, `PA66, ${RECALLED}`),
}

export const MATERIAL_NAMES: Readonly<Record<HardwareMaterial, string>> = {
  steel: 'steel',
  stainless: 'stainless steel',
  titanium: 'titanium',
  aluminium: 'aluminium',
  'aluminium-7075': 'aluminium 7075',
  brass: 'brass',
  nylon: 'nylon',
}

/**
 * `widthMm`: dk, of a countersunk head the theoretical sharp edge. `heightMm`: k. Hex socket
 * `hexMm` across flats, `socketMm` deep (least).
 */
export interface Head {
  readonly shape: 'cylinder' | 'dome' | 'cone'
  readonly widthMm: number
  readonly heightMm: number
  readonly hexMm: number
  readonly socketMm: number
}

const head = (
  shape: Head['shape'],
  widthMm: number,
  heightMm: number,
  hexMm: number,
  socketMm: number,
): Head => ({ shape, widthMm, heightMm, hexMm, socketMm })

/**
 * ISO 4762: engineeringhardware.com/?p=12. ISO 7380-1:2011, M3 up: scribd.com/doc/270233937 and the
 * amesweb note. ISO 10642, M3 up: EN ISO 10642 sheet, scribd.com/document/342214778; its socket
 * depths are from memory (6 % of an M3 × 10).
 */
export const HEADS: Readonly<Record<ScrewStandard, BySize<Head>>> = {
  'ISO 4762': {
    M2: head('cylinder', 3.8, 2, 1.5, 1),
    'M2.5': head('cylinder', 4.5, 2.5, 2, 1.1),
    M3: head('cylinder', 5.5, 3, 2.5, 1.3),
    M4: head('cylinder', 7, 4, 3, 2),
    M5: head('cylinder', 8.5, 5, 4, 2.5),
  },
  'ISO 7380-1': {
    M3: head('dome', 5.7, 1.65, 2, 1.04),
    M4: head('dome', 7.6, 2.2, 2.5, 1.3),
    M5: head('dome', 9.5, 2.75, 3, 1.56),
  },
  'ISO 10642': {
    M3: head('cone', 6.72, 1.86, 2, 1.1),
    M4: head('cone', 8.96, 2.48, 2.5, 1.5),
    M5: head('cone', 11.2, 3.1, 3, 1.9),
  },
}

export const HEAD_NAMES: Readonly<Record<ScrewStandard, string>> = {
  'ISO 4762': 'socket head',
  'ISO 7380-1': 'button head',
  'ISO 10642': 'countersunk head',
}

/**
 * What a countersunk pocket for ISO 10642 is cut to: widest and narrowest head, widest neck, depth.
 * Same EN ISO 10642 sheet.
 */
export const COUNTERSINKS: BySize<{
  readonly widthMm: readonly [least: number, most: number]
  readonly neckMm: number
  readonly depthMm: number
}> = {
  M3: { widthMm: [5.54, 6.72], neckMm: 3.3, depthMm: 1.86 },
  M4: { widthMm: [7.53, 8.96], neckMm: 4.4, depthMm: 2.48 },
  M5: { widthMm: [9.43, 11.2], neckMm: 5.5, depthMm: 3.1 },
}

export const SCREW_CHART =
  'Fuller fastener weight chart “DIN 912”, fullerkr.com, mass of ISO 4762 stated equal'

/**
 * Steel ISO 4762, grams by length, rounded there to 0.1 g. The rows of M3 × 5 and × 6 both read
 * 0.7: they cannot tell the two apart and are left out. The chart's M2, M2.5 and M5 columns
 * disagree with their own shapes by up to 41 % and are not used.
 */
export const SCREW_ROWS: BySize<readonly (readonly [lengthMm: number, massG: number])[]> = {
  M3: [
    [8, 0.8],
    [10, 0.9],
    [12, 1],
    [16, 1.2],
    [20, 1.4],
    [25, 1.6],
    [30, 1.9],
  ],
  M4: [
    [6, 1.5],
    [8, 1.7],
    [10, 1.8],
    [12, 2],
    [16, 2.3],
    [20, 2.7],
    [25, 3.2],
    [30, 3.7],
    [35, 4.2],
    [40, 4.7],
  ],
}

/** Half of the last digit the chart prints. g */
export const SCREW_ROUNDING_G = 0.05

/** Lengths the chart lists, from the shortest to the longest of M2–M5; the ones shops keep. */
const LENGTHS = [3, 4, 5, 6, 8, 10, 12, 16, 20, 25, 30, 35, 40]
const LENGTH_LIMITS: Readonly<Record<MetricSize, readonly [least: number, most: number]>> = {
  M2: [3, 20],
  'M2.5': [4, 25],
  M3: [5, 30],
  M4: [6, 40],
  M5: [8, 40],
}

/** Stocked screw lengths of a size, mm, rising. */
export function stockedLengths(size: MetricSize): readonly number[] {
  const [least, most] = LENGTH_LIMITS[size]
  return LENGTHS.filter((length) => length >= least && length <= most)
}

const plainNut = { M2: [4, 1.6], 'M2.5': [5, 2], M3: [5.5, 2.4], M4: [7, 3.2] } as const

/**
 * Across flats and greatest height. BS EN ISO 4032:2001 table 1; DIN 934 differs at M5; ISO 7040
 * (M3 up) with DIN 985's heights.
 */
export const NUTS: Readonly<
  Record<NutStandard, BySize<readonly [acrossMm: number, heightMm: number]>>
> = {
  'ISO 4032': { ...plainNut, M5: [8, 4.7] },
  'DIN 934': { ...plainNut, M5: [8, 4] },
  'ISO 7040': { M3: [5.5, 4], M4: [7, 5], M5: [8, 5] },
}

export const NUT_SOURCES: Readonly<Record<NutStandard, string>> = {
  'ISO 4032': 'BS EN ISO 4032:2001 table 1, engineersedge.com table 14571',
  'DIN 934': 'din-934.com/dimensions',
  'ISO 7040': 'DIN 985:1987 as quoted by fasten.it, kg per 1000 at 7.85 g/cm³',
}

/** Steel locknuts, grams each; see `NUT_SOURCES`. */
export const LOCKNUT_ROWS: BySize<number> = { M3: 0.5, M4: 1, M5: 1.4 }

export interface WasherRow {
  readonly innerMm: number
  readonly outerMm: number
  readonly heightMm: number
  readonly mark: SourceMark
}

const washer = (
  innerMm: number,
  outerMm: number,
  heightMm: number,
  mark: SourceMark = 'read',
): WasherRow => ({ innerMm, outerMm, heightMm, mark })

/** ISO 7089 from engineeringhardware.com; M2 and M2.5 from memory. */
export const WASHERS: Readonly<Record<MetricSize, WasherRow>> = {
  M2: washer(2.2, 5, 0.3, 'memory'),
  'M2.5': washer(2.7, 6, 0.5, 'memory'),
  M3: washer(3.2, 7, 0.5),
  M4: washer(4.3, 9, 0.8),
  M5: washer(5.3, 10, 1),
}

/** Steel, grams each: ajaxboltco.com/8/Washer/2. */
export const WASHER_ROWS: BySize<number> = { M5: 0.443 }

/** Usual widths, mm: a hex as wide as the nut; a round M3 of 5 mm (common practice, no source). */
export const STANDOFF_ACROSS: Readonly<
  Record<MetricSize, { readonly hex: number; readonly round: number }>
> = {
  M2: { hex: 4, round: 3.5 },
  'M2.5': { hex: 5, round: 4.5 },
  M3: { hex: 5.5, round: 5 },
  M4: { hex: 7, round: 6 },
  M5: { hex: 8, round: 8 },
}

/**
 * Greatest outside diameter and the hole it is set into; `lengthMm` the usual one (common practice,
 * no source).
 */
export interface InsertRow {
  readonly outerMm: number
  readonly holeMm: number
  readonly lengthMm: number
  /** Sold too, for shallow holes (common practice, no source); left out where none is usual. */
  readonly shorterMm?: number
  readonly mark: SourceMark
}

/**
 * M3–M5: Accu hole charts, accu.co.uk/p/488. M2 and M2.5: the holes of a miniature series whose
 * table was read with shifted columns (pencomsf.com), outside diameters from memory; go by your
 * maker's sheet.
 */
export const INSERTS: Readonly<Record<MetricSize, InsertRow>> = {
  M2: { outerMm: 3, holeMm: INSERT_HOLES_MM.M2, lengthMm: 3, mark: 'memory' },
  'M2.5': { outerMm: 3.6, holeMm: INSERT_HOLES_MM['M2.5'], lengthMm: 4, mark: 'memory' },
  M3: { outerMm: 4.4, holeMm: INSERT_HOLES_MM.M3, lengthMm: 5.7, shorterMm: 4, mark: 'read' },
  M4: { outerMm: 6.1, holeMm: INSERT_HOLES_MM.M4, lengthMm: 8.1, mark: 'read' },
  M5: { outerMm: 7.1, holeMm: INSERT_HOLES_MM.M5, lengthMm: 9.5, mark: 'read' },
}
