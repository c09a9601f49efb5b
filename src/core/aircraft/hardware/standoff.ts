import { STANDOFF_ACROSS } from './data.ts'
import { PreweighError } from '../../model/problem.ts'
import { densityWords, discMm2, gramsOf, hexMm2, pitchDiameterMm, requireLength } from './shapes.ts'
import type { HardwareMass, StandoffSpec } from './types.ts'

/** No published mass was found; ends are chamfered and nylon bores vary. */
const SPREAD_PCT = 8

/** Width used when the spec names none. mm */
export function standoffAcrossMm(spec: StandoffSpec): number {
  return spec.acrossMm ?? STANDOFF_ACROSS[spec.size][spec.shape]
}

/**
 * Mass of one standoff threaded right through, g. Throws `bad-settings` when it is narrower than
 * its thread.
 */
export function standoffMass(spec: StandoffSpec): HardwareMass {
  const { shape, size, lengthMm, material } = spec
  const acrossMm = standoffAcrossMm(spec)
  requireLength(lengthMm, 0, `Standoff ${size}`)
  const boreMm = pitchDiameterMm(size)
  if (!(acrossMm > boreMm)) {
    throw new PreweighError(
      'bad-settings',
      `A standoff ${acrossMm} mm wide has no room for an ${size} thread.`,
      `Type a width above ${boreMm.toFixed(1)} mm.`,
    )
  }
  const outsideMm2 = shape === 'hex' ? hexMm2(acrossMm) : discMm2(acrossMm)
  const across = shape === 'hex' ? 'across flats' : 'round'
  const usual = spec.acrossMm === undefined ? ' (usual width, common practice)' : ''
  return {
    massG: gramsOf((outsideMm2 - discMm2(boreMm)) * lengthMm, material),
    basis: 'computed',
    spreadPct: SPREAD_PCT,
    source:
      `computed from shape: ${acrossMm} mm ${across}${usual}, ` +
      `threaded right through; ${densityWords(material)}`,
  }
}
