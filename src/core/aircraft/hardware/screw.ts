import { HEADS, SCREW_CHART, SCREW_ROUNDING_G, SCREW_ROWS, THREADS } from './data.ts'
import type { Head } from './data.ts'
import {
  densityWords,
  discMm2,
  gramsOf,
  hexMm2,
  pitchDiameterMm,
  requireLength,
  requireSize,
} from './shapes.ts'
import type { HardwareMass, MetricSize, ScrewSpec, ScrewStandard } from './types.ts'

/** The M4 shapes meet the chart's rows within 3.4 %. */
const PUBLISHED_SPREAD_PCT = 4
/**
 * M5 and M2.5 shapes come out 5–18 % over the chart, whose columns there are doubtful; no chart was
 * read for the other heads.
 */
const COMPUTED_SPREAD_PCT = 15
/** Between two rows, or past the last: the rounding of the neighbours counts as well. */
const BETWEEN_SPREAD_PCT = 7

/**
 * Length of thread from the tip, b = 2d + 12, the same in ISO 4762, 7380-1 and 10642; a shorter
 * screw is threaded to its head. mm
 */
export function threadLengthMm(size: MetricSize): number {
  return 2 * THREADS[size].diameterMm + 12
}

export function headOf(standard: ScrewStandard, size: MetricSize): Head {
  return requireSize(HEADS[standard][size], standard, size)
}

/**
 * Mass of one screw, g. Steel ISO 4762 in M3 and M4: the published row; between rows the shape,
 * scaled by how far the rows about it lie from theirs. Everything else by shape. Other materials by
 * density. Throws `bad-settings` for a size the standard does not have.
 */
export function screwMass(spec: ScrewSpec): HardwareMass {
  const { standard, size, lengthMm, material } = spec
  const head = headOf(standard, size)
  requireLength(lengthMm, head.shape === 'cone' ? head.heightMm : 0, `Screw ${size}`)
  const shapeG = gramsOf(screwVolumeMm3(standard, size, lengthMm), material)
  const rows = standard === 'ISO 4762' ? SCREW_ROWS[size] : undefined
  if (!rows) {
    const recalled = standard === 'ISO 10642' ? ', socket depth from memory' : ''
    return {
      massG: shapeG,
      basis: 'computed',
      spreadPct: COMPUTED_SPREAD_PCT,
      source: `computed from shape: ${standard} dimensions${recalled}, ${densityWords(material)}`,
    }
  }
  const massG = shapeG * chartRatio(rows, standard, size, lengthMm)
  const row = rows.find(([rowMm]) => rowMm === lengthMm)
  if (row && material === 'steel') {
    const roundingPct = (100 * SCREW_ROUNDING_G) / row[1]
    return {
      massG: row[1],
      basis: 'published',
      spreadPct: Math.max(PUBLISHED_SPREAD_PCT, roundingPct),
      source: SCREW_CHART,
    }
  }
  return {
    massG,
    basis: 'computed',
    spreadPct: BETWEEN_SPREAD_PCT,
    source: row
      ? `${SCREW_CHART}; turned into ${densityWords(material)}`
      : `computed from shape and fitted to the rows about it in: ${SCREW_CHART}; ${densityWords(material)}`,
  }
}

/** Head less its socket, thread on the pitch diameter, plain shank past the thread. mm³ */
function screwVolumeMm3(standard: ScrewStandard, size: MetricSize, lengthMm: number): number {
  const head = headOf(standard, size)
  const bodyMm = lengthMm - (head.shape === 'cone' ? head.heightMm : 0)
  const threadMm = Math.min(bodyMm, threadLengthMm(size))
  return (
    headMm3(head, THREADS[size].diameterMm) -
    hexMm2(head.hexMm) * head.socketMm +
    discMm2(pitchDiameterMm(size)) * threadMm +
    discMm2(THREADS[size].diameterMm) * (bodyMm - threadMm)
  )
}

/**
 * Button heads as spherical caps, countersunk ones as cones from the sharp edge down to the shank.
 * mm³
 */
function headMm3(head: Head, neckMm: number): number {
  const { widthMm, heightMm } = head
  switch (head.shape) {
    case 'cylinder':
      return discMm2(widthMm) * heightMm
    case 'dome':
      return ((Math.PI * heightMm) / 6) * (3 * (widthMm / 2) ** 2 + heightMm ** 2)
    case 'cone':
      return ((Math.PI * heightMm) / 12) * (widthMm ** 2 + widthMm * neckMm + neckMm ** 2)
  }
}

/**
 * Published ÷ shape at `lengthMm`: linear between the rows about it, that of the end row outside
 * them.
 */
function chartRatio(
  rows: readonly (readonly [number, number])[],
  standard: ScrewStandard,
  size: MetricSize,
  lengthMm: number,
): number {
  const ratioAt = ([rowMm, rowG]: readonly [number, number]): number =>
    rowG / gramsOf(screwVolumeMm3(standard, size, rowMm), 'steel')
  const above = rows.find(([rowMm]) => rowMm >= lengthMm)
  const below = rows.findLast(([rowMm]) => rowMm <= lengthMm)
  if (!above && !below) return 1
  if (!above || !below || above[0] === below[0]) return ratioAt(above ?? below ?? [1, 1])
  const share = (lengthMm - below[0]) / (above[0] - below[0])
  return ratioAt(below) * (1 - share) + ratioAt(above) * share
}
