import type { Frame, WeighedPiece, WeighIn } from '../../core/model/frame.ts'
import type { OnScale } from './types.ts'

/** What the scale said, as it is kept: the mean of one piece, tare off. */
export function weighInOf(
  { scaleG, pieces, tareG, stepG, trusted }: OnScale,
  of: WeighedPiece,
  calculatedG: number | null,
  date: string,
): WeighIn {
  const massG = (scaleG - tareG) / pieces
  return { massG, pieces, tareG, stepG, trusted, date, of, calculatedG }
}

/** The frame with a part's weighing, or without one. */
export function weighParts(frame: Frame, partId: string, weighIn: WeighIn | null): Frame {
  const parts = frame.parts.map((part) => {
    if (part.id !== partId) return part
    const { weighIn: _old, ...rest } = part
    return weighIn === null ? rest : { ...rest, weighIn }
  })
  return { ...frame, parts }
}
