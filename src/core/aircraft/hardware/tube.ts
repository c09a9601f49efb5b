import type { HardwareMass } from './types.ts'
import { PreweighError } from '../../model/problem.ts'
import { DENSITIES } from './data.ts'
import type { HardwareMaterial } from './types.ts'
import { densityWords, requireLength } from './shapes.ts'
import { ringMm2 } from './washer.ts'

export type TubeMaterial = HardwareMaterial | 'carbon'

/**
 * Woven carbon/epoxy 1.50–1.60 g/cm³: EP-CF60 data sheet (QMUL hub) 1.57–1.58, azom.com article 632
 * 1.5.
 */
const CARBON_G_CM3 = 1.55

export interface TubeSpec {
  readonly outerMm: number
  /** 0 for a rod. */
  readonly innerMm: number
  readonly lengthMm: number
  readonly material: TubeMaterial
}

/**
 * Mass of a tube or rod cut to length, g. Throws `bad-settings` when the bore is not inside the
 * tube.
 */
export function tubeMass(spec: TubeSpec): HardwareMass {
  const { outerMm, innerMm, lengthMm, material } = spec
  requireLength(lengthMm, 0, 'Tube')
  if (!(innerMm >= 0 && outerMm > innerMm)) {
    throw new PreweighError(
      'bad-settings',
      `A tube ${outerMm} mm outside cannot be ${innerMm} mm inside.`,
      'Type an inside diameter smaller than the outside one; 0 for a rod.',
    )
  }
  const densityGCm3 = material === 'carbon' ? CARBON_G_CM3 : DENSITIES[material].value
  const words =
    material === 'carbon' ? `carbon/epoxy at ${CARBON_G_CM3} g/cm³` : densityWords(material)
  return {
    massG: (ringMm2(outerMm, innerMm) * lengthMm * densityGCm3) / 1000,
    basis: 'computed',
    // Makers hold diameters to a tenth: on a 0.5 mm wall that is a tenth of the mass (common
    // practice, no source).
    spreadPct: 10,
    source: `computed from shape: ${words}`,
  }
}
