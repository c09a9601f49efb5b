import type { Material, PartFigures, Printer } from '../model/figures.ts'
import type { Part, WeighIn } from '../model/frame.ts'
import type { MassFrom } from './types.ts'
import { changesSince, pieceOf } from './weighIn.ts'
import type { Change } from './weighIn.ts'

/** The mass of one piece and where it comes from; see `FrameRow`. */
export interface PieceMass {
  readonly massG: number
  readonly massFrom: MassFrom
  readonly scaleRatio: number | null
  readonly changes: readonly Change[]
}

/**
 * The mass of one piece: the scale's while the part is what was weighed; else the calculated one,
 * times scale ÷ calculated of the piece as it was, where both are known. Without figures only a
 * weighing that holds says anything; null where there is none.
 */
export function pieceMass(
  part: Part,
  material: Material,
  printer: Printer,
  figures: PartFigures | null,
): PieceMass | null {
  const calculatedG = figures?.massG.mid ?? null
  const { weighIn } = part
  if (weighIn !== undefined) {
    const changes = changesSince(weighIn.of, pieceOf(part, material, printer))
    if (changes.length === 0) {
      const scaleRatio = ratio(weighIn.massG, calculatedG)
      return { massG: weighIn.massG, massFrom: 'weighed', scaleRatio, changes }
    }
    return calculatedG === null ? null : carriedOver(weighIn, calculatedG, changes)
  }
  if (calculatedG === null) return null
  return { massG: calculatedG, massFrom: 'calculated', scaleRatio: null, changes: [] }
}

/** Of a piece that has changed since it was weighed. */
function carriedOver(weighIn: WeighIn, calculatedG: number, changes: readonly Change[]): PieceMass {
  const scaleRatio = ratio(weighIn.massG, weighIn.calculatedG)
  return scaleRatio === null
    ? { massG: calculatedG, massFrom: 'calculated', scaleRatio, changes }
    : { massG: calculatedG * scaleRatio, massFrom: 'weighed before', scaleRatio, changes }
}

function ratio(scaleG: number, calculatedG: number | null): number | null {
  return calculatedG !== null && calculatedG > 0 ? scaleG / calculatedG : null
}
