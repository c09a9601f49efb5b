import { layerLaid, type LaidVolumes } from '../../core/figures/layerLaid.ts'
import type { FrameRow } from '../../core/frame/types.ts'
import type { Census } from '../../core/model/census.ts'
import type { PartFigures } from '../../core/model/figures.ts'
import type { LaidRecipe } from '../../core/model/settings.ts'

export interface LaidShare {
  readonly id: 'walls' | 'gaps' | 'skins' | 'strands' | 'infill' | 'supports' | 'brim'
  readonly words: string
  readonly massG: number
  /** 0–1 of everything laid. */
  readonly share: number
}

/** By kind; supports and brim are laid too, and taken off afterwards. */
function laidShares(of: LaidVolumes, gramsPerMm3: number): readonly LaidShare[] {
  const laidMm3 = of.wallMm3 + of.skinMm3 + of.infillMm3 + of.supportMm3 + of.brimMm3
  if (!(laidMm3 > 0)) return []
  const laid = (id: LaidShare['id'], words: string, mm3: number): LaidShare => ({
    id,
    words,
    massG: mm3 * gramsPerMm3,
    share: mm3 / laidMm3,
  })
  return [
    laid('walls', 'walls', of.wallMm3 - of.gapMm3),
    laid('gaps', 'gap lines between walls', of.gapMm3),
    laid('skins', 'skins', of.skinMm3 - of.strandMm3),
    laid('strands', 'strands under skins', of.strandMm3),
    laid('infill', 'infill', of.infillMm3),
    laid('supports', 'supports, removed', of.supportMm3),
    laid('brim', 'brim, removed', of.brimMm3),
  ].filter(({ share }) => share > 0)
}

/** As one piece counts in the frame; null where it holds nothing. */
function densityOf(figures: PartFigures, sum: FrameRow | null): number | null {
  const keptMm3 = figures.wallMm3 + figures.skinMm3 + figures.infillMm3
  return keptMm3 > 0 ? (sum?.pieceG.mid ?? figures.massG.mid) / keptMm3 : null
}

/** What one piece is laid as, where there are figures; else none. */
export function laidInPiece(
  figures: PartFigures | null,
  sum: FrameRow | null,
): readonly LaidShare[] {
  const grams = figures === null ? null : densityOf(figures, sum)
  return figures === null || grams === null ? [] : laidShares(figures, grams)
}

/** What one layer of it (0 is the lowest) is laid as. */
export function laidInLayer(
  layer: number,
  census: Census,
  recipe: LaidRecipe,
  figures: PartFigures,
  sum: FrameRow | null,
): readonly LaidShare[] {
  const grams = densityOf(figures, sum)
  return grams === null ? [] : laidShares(layerLaid(census, recipe, layer), grams)
}
