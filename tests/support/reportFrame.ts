import type { Aircraft } from '../../src/core/model/aircraft.ts'
import { AIRCRAFT_DEFAULTS } from '../../src/core/data/aircraft.ts'
import { PRICES_DEFAULTS } from '../../src/core/data/prices.ts'
import { PRINTER_DEFAULT } from '../../src/core/data/printers.ts'
import { partFigures } from '../../src/core/figures/part.ts'
import type { Frame, Part } from '../../src/core/model/frame.ts'
import type { Mesh } from '../../src/core/model/mesh.ts'
import { partFacts } from '../../src/core/aircraft/report/partFacts.ts'
import type { ReportPart } from '../../src/core/aircraft/report/types.ts'
import { POSE_AS_DRAWN, RECIPE_DEFAULTS } from '../../src/core/model/settings.ts'
import { censusOf } from './censusCase.ts'
import { materialOf } from './ledgerParts.ts'

/** A part of the aircraft from a mesh in mm that lies on z = 0. */
export function reportPart(
  id: string,
  mesh: Mesh,
  { materialId = 'petg', ...more }: Partial<Part> = {},
): ReportPart {
  const recipe = more.recipe ?? RECIPE_DEFAULTS
  const part: Part = {
    id,
    name: id,
    fileName: `${id}.stl`,
    meshHash: id,
    unit: 'millimetre',
    quantity: 1,
    spares: 0,
    mirrored: 0,
    materialId,
    role: null,
    pose: POSE_AS_DRAWN,
    note: '',
    zone: null,
    ...more,
    recipe,
  }
  const material = materialOf(materialId)
  const census = censusOf(mesh, recipe)
  const figures = partFigures(census, recipe, material, PRINTER_DEFAULT, PRICES_DEFAULTS)
  return { part, material, figures, census, facts: partFacts(mesh, 1, mesh) }
}

export function reportFrame(parts: readonly ReportPart[], aircraft: Partial<Aircraft> = {}): Frame {
  return {
    version: 3,
    id: 'frame',
    name: 'Frame',
    parts: parts.map(({ part }) => part),
    materials: [],
    printer: PRINTER_DEFAULT,
    prices: PRICES_DEFAULTS,
    carbon: null,
    aircraft: { ...AIRCRAFT_DEFAULTS, ...aircraft },
  }
}
