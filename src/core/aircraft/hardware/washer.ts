import { WASHERS, WASHER_ROWS } from './data.ts'
import { densityWords, discMm2, gramsOf } from './shapes.ts'
import type { HardwareMass, WasherSpec } from './types.ts'

/** Shape meets the published M5, M6 and M8 within 0.4 %; sheet thickness has its tolerance. */
const SPREAD_PCT = 5
const MEMORY_SPREAD_PCT = 15

/** Mass of one ISO 7089 washer, g. */
export function washerMass(spec: WasherSpec): HardwareMass {
  const { size, material } = spec
  const row = WASHERS[size]
  const publishedG = material === 'steel' ? WASHER_ROWS[size] : undefined
  if (publishedG !== undefined) {
    return {
      massG: publishedG,
      basis: 'published',
      spreadPct: SPREAD_PCT,
      source: 'ajaxboltco.com washer table, grams each',
    }
  }
  const recalled = row.mark === 'memory'
  return {
    massG: gramsOf(ringMm2(row.outerMm, row.innerMm) * row.heightMm, material),
    basis: recalled ? 'memory' : 'computed',
    spreadPct: recalled ? MEMORY_SPREAD_PCT : SPREAD_PCT,
    source: recalled
      ? `computed from dimensions from memory, not read; ${densityWords(material)}`
      : `computed from shape: ISO 7089 dimensions, engineeringhardware.com; ${densityWords(material)}`,
  }
}

/** Area of a ring, mm². */
export function ringMm2(outerMm: number, innerMm: number): number {
  return discMm2(outerMm) - discMm2(innerMm)
}
