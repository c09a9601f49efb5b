import { DENSITIES, LOCKNUT_ROWS, NUTS, NUT_SOURCES } from './data.ts'
import { densityWords, discMm2, gramsOf, hexMm2, pitchDiameterMm, requireSize } from './shapes.ts'
import type { HardwareMass, MetricSize, NutSpec, NutStandard } from './types.ts'

/**
 * What the chamfers take off a sharp-edged hexagon (common practice, no source); with it M3 comes
 * to 0.36 g.
 */
const CHAMFER_SHARE = 0.93
const COMPUTED_SPREAD_PCT = 8
/** One digit is all the table prints of an M3. */
const LOCKNUT_SPREAD_PCT = 12

/**
 * Greatest height, with the nylon ring where there is one: what a stack has to leave room for. mm
 */
export function nutHeightMm(standard: NutStandard, size: MetricSize): number {
  return requireSize(NUTS[standard][size], standard, size)[1]
}

/**
 * Mass of one nut, g. ISO 7040 from its published rows, the plain ones by shape. Throws
 * `bad-settings` for a size the standard does not have.
 */
export function nutMass(spec: NutSpec): HardwareMass {
  const { standard, size, material } = spec
  const [acrossMm, heightMm] = requireSize(NUTS[standard][size], standard, size)
  const source = NUT_SOURCES[standard]
  if (standard === 'ISO 7040') {
    const steelG = requireSize(LOCKNUT_ROWS[size], standard, size)
    const ratio = DENSITIES[material].value / DENSITIES.steel.value
    const same = material === 'steel'
    return {
      massG: steelG * ratio,
      basis: same ? 'published' : 'computed',
      spreadPct: LOCKNUT_SPREAD_PCT,
      source: same ? source : `${source}; turned into ${densityWords(material)}`,
    }
  }
  const sharpMm2 = hexMm2(acrossMm) - discMm2(pitchDiameterMm(size))
  return {
    massG: gramsOf(sharpMm2 * heightMm * CHAMFER_SHARE, material),
    basis: 'computed',
    spreadPct: COMPUTED_SPREAD_PCT,
    source: `computed from shape: ${source}; ${densityWords(material)}`,
  }
}
