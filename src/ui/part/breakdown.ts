import type { PartFigures } from '../../core/figures.ts'

export interface Slice {
  readonly id: 'walls' | 'skins' | 'infill' | 'supports' | 'brim'
  readonly words: string
  readonly massG: number
  /** 0–1 of everything laid. */
  readonly share: number
}

/** What one piece is laid as, in grams; supports and brim are laid too, and taken off afterwards. */
export function breakdown(figures: PartFigures): readonly Slice[] {
  const keptMm3 = figures.wallMm3 + figures.skinMm3 + figures.infillMm3
  const laidMm3 = keptMm3 + figures.supportMm3 + figures.brimMm3
  if (keptMm3 <= 0 || laidMm3 <= 0) return []
  const gramsPerMm3 = figures.massG.mid / keptMm3
  const slice = (id: Slice['id'], words: string, mm3: number): Slice => ({
    id,
    words,
    massG: mm3 * gramsPerMm3,
    share: mm3 / laidMm3,
  })
  return [
    slice('walls', 'walls', figures.wallMm3),
    slice('skins', 'skins', figures.skinMm3),
    slice('infill', 'infill', figures.infillMm3),
    slice('supports', 'supports, removed', figures.supportMm3),
    slice('brim', 'brim, removed', figures.brimMm3),
  ].filter(({ share }) => share > 0)
}
