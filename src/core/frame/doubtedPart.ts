import { scaleNoiseG } from '../doubt/readings.ts'
import { layingErrors, spoolErrors } from '../doubt/factors.ts'
import type { Material, PartFigures, Printer } from '../model/figures.ts'
import type { Part } from '../model/frame.ts'
import type { DoubtedPart, WeighedPieces } from './frameDoubt.ts'
import { SCALE_STEP_G } from './itemLine.ts'
import type { PieceMass } from './pieceMass.ts'

/** A part with the mass of its piece, as the model of doubt has it. */
export function doubtedPart(
  part: Part,
  material: Material,
  printer: Printer,
  figures: PartFigures,
  mass: PieceMass,
): DoubtedPart {
  const { id, name, quantity, spares } = part
  const weighed = weighedPieces(part, material, printer, figures, mass)
  return { id, name, quantity, spares, material, figures, weighed }
}

/**
 * What the scale says of the part's pieces as they are. Weighed before a change, their ratio
 * carries over, but no better than the count of both is; of another spool or on another printer,
 * no better than those are.
 */
function weighedPieces(
  { weighIn }: Part,
  material: Material,
  printer: Printer,
  { doubt }: PartFigures,
  { massG, massFrom, changes }: PieceMass,
): WeighedPieces | null {
  if (weighIn === undefined || massFrom === 'calculated') return null
  const pieces = weighIn.pieces ?? 1
  const tared = (weighIn.tareG ?? 0) > 0
  const stepG = weighIn.stepG ?? SCALE_STEP_G
  const scale = scaleNoiseG(weighIn.massG * pieces, stepG, tared) / pieces / weighIn.massG
  const errors = [
    ...(massFrom === 'weighed before' ? [doubt.mass.own] : []),
    ...(changes.includes('material') ? spoolErrors(material).map(({ effect }) => effect) : []),
    ...(changes.includes('printer') || changes.includes('material')
      ? layingErrors(printer.id, material, 1).map(({ effect }) => effect)
      : []),
  ]
  return {
    eachG: massG,
    pieces,
    noiseG: massG * Math.hypot(scale, ...errors.map((error) => Math.SQRT2 * error)),
    trusted: weighIn.trusted ?? false,
  }
}
