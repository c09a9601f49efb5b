import type { Census } from '../model/census.ts'
import type { PartFigures } from '../model/figures.ts'
import type { Recipe } from '../model/settings.ts'
import { formatPercent } from '../words/format.ts'

/**
 * Where ten points of infill move a part's mass by less than this share, infill is no way to make
 * it lighter.
 */
const HARDLY_MATTERS = 0.05

/**
 * The sentence beside the infill slider where infill hardly matters; null where it does. A 3 mm
 * deck with 1 mm skins at 30 % is (2 + 0.3)/3 = 77 % solid before its side walls are counted, and
 * ten points move it by 0.1/2.3 = 4 %.
 */
export function infillNote(
  figures: PartFigures,
  census: Census,
  recipe: Recipe,
  locale?: string,
): string | null {
  const { modelMm3, roomMm3, zones } = census
  if (modelMm3 <= 0) return null
  if (roomMm3 <= 0 && zones.some((zone) => zone !== null)) {
    return 'All there is to fill lies in zones: this infill changes nothing here.'
  }
  if (roomMm3 <= 0) return 'This part is all walls and skins: infill changes nothing here.'
  const solidMm3 = figures.wallMm3 + figures.skinMm3
  const keptMm3 = solidMm3 + figures.infillMm3
  const stepShare = (0.1 * roomMm3) / keptMm3
  if (stepShare >= HARDLY_MATTERS) return null
  const solid = formatPercent(solidMm3 / modelMm3, locale)
  const filled = formatPercent(keptMm3 / modelMm3, locale)
  const step = formatPercent(stepShare, locale)
  const infill = formatPercent(recipe.infillPct / 100, locale)
  return (
    `Walls and skins alone fill ${solid} of this part; at ${infill} infill it is ${filled} solid. ` +
    `Ten points more or less change its mass by only about ${step}.`
  )
}
