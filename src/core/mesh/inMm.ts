import type { LengthUnit, Mesh } from '../model/mesh.ts'
import { unitToMm } from '../model/units.ts'

/** A mesh that is taken in a unit, in mm; the same one where that is its unit. */
export function inMm(mesh: Mesh, unit: LengthUnit): Mesh {
  const mm = unitToMm(unit)
  if (mm === 1) return mesh
  const { positions, indices } = mesh
  return { positions: Float64Array.from(positions, (value) => value * mm), indices }
}
