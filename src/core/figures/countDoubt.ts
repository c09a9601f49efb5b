import type { Census } from '../model/census.ts'
import type { Recipe } from '../model/settings.ts'
import { SUPPORT_SHARE } from './deposit.ts'

/**
 * How far the plastic of a census may be off for what it could not see, as a share that holds 95 %
 * of cases: outlines that were bridged, and layers that were not counted. 0 where all is seen.
 */
export function countDoubt(census: Census, recipe: Recipe): number {
  const laid = laidMm3(census, recipe)
  return census.doubtfulShare + (laid > 0 ? census.coarseMm3 / laid : 0)
}

/** The same of its supports, which cost time and filament: a share of the plastic that is kept. */
export function supportDoubt(census: Census, recipe: Recipe): number {
  const laid = laidMm3(census, recipe)
  return laid > 0 ? (SUPPORT_SHARE * census.coarseSupportMm3) / laid : 0
}

function laidMm3({ wallMm3, skinMm3, roomMm3 }: Census, { infillPct }: Recipe): number {
  return wallMm3 + skinMm3 + (infillPct / 100) * roomMm3
}
