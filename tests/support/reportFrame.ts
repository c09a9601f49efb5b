import type { Aircraft } from '../../src/core/model/aircraft.ts'
import { AIRCRAFT_DEFAULTS } from '../../src/core/data/aircraft.ts'
import { PRICES_DEFAULTS } from '../../src/core/data/prices.ts'
import { PRINTER_DEFAULT } from '../../src/core/data/printers.ts'
import { partFigures } from '../../src/core/figures/part.ts'
import type { Frame, Part } from '../../src/core/model/frame.ts'
import type { Mesh } from '../../src/core/model/mesh.ts'
import { partTraits } from '../../src/core/aircraft/report/partTraits.ts'
import { aircraftReport } from '../../src/core/aircraft/report/aircraftReport.ts'
import type { PartLook } from '../../src/core/aircraft/report/types.ts'
import { weighFrame } from '../../src/core/frame/weighFrame.ts'
import type { Material, PartFigures } from '../../src/core/model/figures.ts'
import { POSE_AS_DRAWN, RECIPE_DEFAULTS } from '../../src/core/model/settings.ts'
import { censusOf } from './censusCase.ts'
import { materialOf, weighedPart } from './ledgerParts.ts'

/** A part with figures, and what is known of its mesh. */
interface CountedPart extends PartLook {
  readonly part: Part
  readonly material: Material
  readonly figures: PartFigures
}

/** A part of the aircraft from a mesh in mm that lies on z = 0. */
export function reportPart(
  id: string,
  mesh: Mesh,
  { materialId = 'petg', scaleG, ...more }: Partial<Part> & { readonly scaleG?: number } = {},
): CountedPart {
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
    zones: [],
    ...more,
    recipe,
  }
  const material = materialOf(materialId)
  const census = censusOf(mesh, recipe)
  const figures = partFigures(census, recipe, material, PRINTER_DEFAULT, PRICES_DEFAULTS)
  const weighed = scaleG === undefined ? part : weighedPart(part, material, scaleG)
  return { part: weighed, material, figures, census, traits: partTraits(mesh, 1, mesh) }
}

export function reportFrame(
  parts: readonly CountedPart[],
  aircraft: Partial<Aircraft> = {},
): Frame {
  return {
    version: 8,
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

/** The report of a frame of which these parts were counted; its others have no figures. */
export function reportOf(parts: readonly CountedPart[], frame: Frame) {
  const counted = new Map(parts.map((one) => [one.part.id, one]))
  const sum = weighFrame(
    frame.parts.map((part) => {
      const one = counted.get(part.id)
      const material = one?.material ?? materialOf(part.materialId)
      return { part, material, figures: one?.figures ?? null, failed: one === undefined }
    }),
    frame,
  )
  const lookOf = (id: string): PartLook => counted.get(id) ?? { census: null, traits: null }
  return aircraftReport(sum, lookOf, frame)
}
