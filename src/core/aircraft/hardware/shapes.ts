import { PreweighError } from '../../model/problem.ts'
import { DENSITIES, MATERIAL_NAMES, THREADS } from './data.ts'
import type { HardwareMaterial, MetricSize } from './types.ts'

/** Of a disc. mm² */
export function discMm2(diameterMm: number): number {
  return (Math.PI / 4) * diameterMm * diameterMm
}

/** Of a regular hexagon by the width across its flats: √3/2·s². mm² */
export function hexMm2(acrossMm: number): number {
  return (Math.sqrt(3) / 2) * acrossMm * acrossMm
}

/**
 * Pitch diameter d − 0.6495·P (ISO 724): a thread cut here weighs the same as the real one, in a
 * screw and in a nut. mm
 */
export function pitchDiameterMm(size: MetricSize): number {
  const { diameterMm, pitchMm } = THREADS[size]
  return diameterMm - 0.6495 * pitchMm
}

/** g of a volume in mm³. */
export function gramsOf(volumeMm3: number, material: HardwareMaterial): number {
  return (volumeMm3 * DENSITIES[material].value) / 1000
}

/**
 * "titanium at 4.43 g/cm³ (from memory)": the words for a source, with the mark of a density that
 * was not read.
 */
export function densityWords(material: HardwareMaterial): string {
  const { value, mark } = DENSITIES[material]
  return `${MATERIAL_NAMES[material]} at ${value} g/cm³${mark === 'memory' ? ' (from memory)' : ''}`
}

/** The value, or a `bad-settings` problem that names the missing size. */
export function requireSize<T>(found: T | undefined, standard: string, size: MetricSize): T {
  if (found !== undefined) return found
  throw new PreweighError(
    'bad-settings',
    `${standard} has no ${size}.`,
    'Choose another size, or type the mass of the piece.',
  )
}

/** Throws a `bad-settings` problem unless the length is more than `leastMm`. */
export function requireLength(lengthMm: number, leastMm: number, name: string): void {
  if (Number.isFinite(lengthMm) && lengthMm > leastMm) return
  throw new PreweighError(
    'bad-settings',
    `${name}: a length of ${lengthMm} mm does not work.`,
    leastMm > 0
      ? `Type a length above ${leastMm} mm: its head alone is that deep.`
      : 'Type a length above 0 mm.',
  )
}
