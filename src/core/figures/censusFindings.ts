import type { Census } from '../model/census.ts'
import type { PartFigures } from '../model/figures.ts'
import type { Finding } from '../model/mesh.ts'
import type { Recipe } from '../model/settings.ts'
import { layerFindings } from './layerFindings.ts'
import { infillNote } from './note.ts'

/** Everything there is to say of a counted part, heaviest first: its mesh's findings, and whether infill hardly matters. */
export function censusFindings(
  measured: readonly Finding[],
  figures: PartFigures,
  census: Census,
  recipe: Recipe,
  locale?: string,
): readonly Finding[] {
  const findings = layerFindings(measured, census, locale)
  const message = infillNote(figures, census, recipe, locale)
  if (message === null) return findings
  return [...findings, { code: 'mostly-skin', grade: 'note', short: 'nearly all skin', message }]
}
