import type { Census } from '../model/census.ts'
import type { PartFigures } from '../model/figures.ts'
import type { Finding } from '../model/mesh.ts'
import type { Recipe } from '../model/settings.ts'
import { formatPercent } from '../words/format.ts'
import { infillNote } from './note.ts'

/** Bridged outline below this share is lost in the other uncertainties. */
const WORTH_SAYING = 0.002

/** What only the counted layers tell: outlines that had to be bridged, and parts where infill hardly matters. */
export function censusFindings(
  figures: PartFigures,
  census: Census,
  recipe: Recipe,
  locale?: string,
): readonly Finding[] {
  const findings: Finding[] = []
  if (census.doubtfulShare > WORTH_SAYING) {
    const share = formatPercent(census.doubtfulShare, locale)
    findings.push({
      code: 'doubtful-layers',
      severity: 'caution',
      message: `The mesh leaves ${share} of its layers’ outlines open; they were closed straight, and the range of grams and hours is wider by as much. Close the gaps in your drawing for firmer figures.`,
    })
  }
  const note = infillNote(figures, census, recipe, locale)
  if (note !== null) findings.push({ code: 'mostly-skin', severity: 'note', message: note })
  return findings
}
