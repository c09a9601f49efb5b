import { AIRCRAFT_DEFAULTS } from '../../src/core/data/aircraft.ts'
import { MATERIALS } from '../../src/core/data/materials.ts'
import { PRINTER_DEFAULT } from '../../src/core/data/printers.ts'
import { clockDoubt } from '../../src/core/doubt/factors.ts'
import { rangeOfFigure } from '../../src/core/doubt/figureDoubt.ts'
import { printedDoubt } from '../../src/core/doubt/printed.ts'
import type { PartShares } from '../../src/core/doubt/printed.ts'
import type { FramePart } from '../../src/core/frame/types.ts'
import { pieceOf } from '../../src/core/frame/weighIn.ts'
import type { Aircraft, Item } from '../../src/core/model/aircraft.ts'
import type { Material, PartFigures } from '../../src/core/model/figures.ts'
import type { CarbonFrame, Part } from '../../src/core/model/frame.ts'
import { exactRange } from '../../src/core/model/ranges.ts'
import { POSE_AS_DRAWN, RECIPE_DEFAULTS } from '../../src/core/model/settings.ts'

export function materialOf(id: string): Material {
  const found = MATERIALS.find((material) => material.id === id)
  if (!found) throw new Error(`no material ${id}`)
  return found
}

const SURE = { shared: [], own: 0 }
export const NO_DOUBT = { mass: SURE, spool: SURE, filament: SURE, time: SURE, cost: SURE }

/**
 * Figures of a piece of a given mass, a solid one unless told otherwise; hours and money in step.
 */
function figuresOfMass(
  massG: number,
  material: Material = materialOf('pla'),
  shares: Partial<PartShares> = {},
): PartFigures {
  const solid = { packed: 1, firstLayer: 0.05, turns: 0, habits: [], count: 0.02 }
  const mass = printedDoubt(material, PRINTER_DEFAULT.id, { ...solid, ...shares })
  const time = clockDoubt(PRINTER_DEFAULT, 0)
  const massRange = rangeOfFigure(massG, mass)
  const money = { filament: massG / 50, electricity: 0, wear: 0, failures: 0 }
  return {
    depositMm3: massG * 800,
    wallMm3: massG * 800,
    gapMm3: 0,
    skinMm3: 0,
    strandMm3: 0,
    infillMm3: 0,
    turnShare: 0,
    supportMm3: 0,
    brimMm3: 0,
    solidShare: 1,
    massG: massRange,
    spoolG: massRange,
    filamentM: exactRange(massG / 3),
    cost: { ...rangeOfFigure(massG / 50, mass), ...money },
    timeS: rangeOfFigure(massG * 240, time),
    travel: null,
    doubt: { ...NO_DOUBT, mass, spool: mass, cost: mass, time },
  }
}

interface MoreOfPart extends Partial<Part> {
  readonly material?: Material
  /** What a scale of tenths said of one piece, as it is now. */
  readonly scaleG?: number
}

/** A printed part of a given mass a piece on its way into a frame on the usual printer. */
export function printedPart(
  id: string,
  massG: number,
  quantity: number,
  { material = materialOf('pla'), scaleG, ...more }: MoreOfPart = {},
): FramePart {
  const part: Part = {
    id,
    name: id,
    fileName: `${id}.stl`,
    meshHash: id,
    unit: 'millimetre',
    quantity,
    spares: 0,
    mirrored: 0,
    materialId: material.id,
    recipe: RECIPE_DEFAULTS,
    role: null,
    pose: POSE_AS_DRAWN,
    note: '',
    zones: [],
    ...more,
  }
  const weighed = scaleG === undefined ? part : weighedPart(part, material, scaleG)
  return { part: weighed, material, figures: figuresOfMass(massG, material), failed: false }
}

/** The part with one piece of it on a scale of tenths, as it is now. */
export function weighedPart(part: Part, material: Material, massG: number): Part {
  const of = pieceOf(part, material, PRINTER_DEFAULT)
  return { ...part, weighIn: { massG, stepG: 0.1, date: null, of, calculatedG: null } }
}

/** A frame with nothing bought, no limits, on the usual printer. */
export function bareFrame(aircraft: Partial<Aircraft> = {}, carbon: CarbonFrame | null = null) {
  return { aircraft: { ...AIRCRAFT_DEFAULTS, ...aircraft }, carbon, printer: PRINTER_DEFAULT }
}

/** An item typed in by hand. */
export function typedItem(id: string, massG: number, more: Partial<Item> = {}): Item {
  return {
    id,
    name: id,
    group: 'other',
    quantity: 1,
    massG,
    costEach: 0,
    status: 'estimated',
    basis: 'typed',
    positionMm: null,
    ...more,
  }
}
