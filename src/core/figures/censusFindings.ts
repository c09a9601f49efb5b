import type { Census } from '../model/census.ts'
import type { PartFigures } from '../model/figures.ts'
import type { Finding } from '../model/mesh.ts'
import type { Recipe } from '../model/settings.ts'
import { layerFindings } from './layerFindings.ts'
import { heaviestFirst } from '../model/grades.ts'
import { infillNote } from './note.ts'
import { tallLayerFinding } from './tallLayerFinding.ts'
import { tieFinding } from './tieFinding.ts'

/**
 * Everything there is to say of a counted part, heaviest first: its mesh's findings, and whether
 * infill hardly matters.
 */
export function censusFindings(
  measured: readonly Finding[],
  figures: PartFigures,
  census: Census,
  recipe: Recipe,
  locale?: string,
): readonly Finding[] {
  const tie = tieFinding(census, recipe, locale)
  const layered = layerFindings(measured, census, locale)
  const tall = tallLayerFinding(recipe, locale)
  const ofRecipe = [tie, tall].filter((each) => each !== null)
  const findings = ofRecipe.length === 0 ? layered : heaviestFirst([...layered, ...ofRecipe])
  const message = infillNote(figures, census, recipe, locale)
  if (message === null) return findings
  return [...findings, { code: 'mostly-skin', grade: 'note', short: 'nearly all skin', message }]
}
