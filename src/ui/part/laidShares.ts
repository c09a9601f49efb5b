import type { FrameRow } from '../../core/frame/types.ts'
import type { PartFigures } from '../../core/model/figures.ts'

export interface LaidShare {
  readonly id: 'walls' | 'gaps' | 'skins' | 'strands' | 'infill' | 'supports' | 'brim'
  readonly words: string
  readonly massG: number
  /** 0–1 of everything laid. */
  readonly share: number
}

/**
 * What one piece of `pieceG` grams, as it counts in the frame, is laid as; supports and brim are
 * laid too, and taken off afterwards.
 */
function laidShares(figures: PartFigures, pieceG: number): readonly LaidShare[] {
  const keptMm3 = figures.wallMm3 + figures.skinMm3 + figures.infillMm3
  const laidMm3 = keptMm3 + figures.supportMm3 + figures.brimMm3
  if (keptMm3 <= 0 || laidMm3 <= 0) return []
  const gramsPerMm3 = pieceG / keptMm3
  const laid = (id: LaidShare['id'], words: string, mm3: number): LaidShare => ({
    id,
    words,
    massG: mm3 * gramsPerMm3,
    share: mm3 / laidMm3,
  })
  return [
    laid('walls', 'walls', figures.wallMm3 - figures.gapMm3),
    laid('gaps', 'gap lines between walls', figures.gapMm3),
    laid('skins', 'skins', figures.skinMm3 - figures.strandMm3),
    laid('strands', 'strands under skins', figures.strandMm3),
    laid('infill', 'infill', figures.infillMm3),
    laid('supports', 'supports, removed', figures.supportMm3),
    laid('brim', 'brim, removed', figures.brimMm3),
  ].filter(({ share }) => share > 0)
}

/** The same with the grams that the frame's sum has for a piece, where there are figures; else none. */
export function laidInPiece(
  figures: PartFigures | null,
  sum: FrameRow | null,
): readonly LaidShare[] {
  return figures === null ? [] : laidShares(figures, sum?.pieceG.mid ?? figures.massG.mid)
}
