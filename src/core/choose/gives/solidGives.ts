import { infillStiffnessAlong } from '../../stiffness/moduli/infillStiffness.ts'
import { acrossShareOf } from '../../data/acrossShares.ts'
import { geometryKey } from './beamGives.ts'
import type { GivesLoad, GivesOf } from './types.ts'

/** One solid sum. */
export interface SolidAnchor {
  readonly infillPct: number
  readonly acrossShare: number
  readonly youngsGPa: number
  readonly massG: number
  readonly deflectionMm: number
  readonly firstHz: number | null
}

/**
 * By solid sums of each geometry at a few infills, straight between them over the infill's own
 * modulus, the mean of along its lines and between them: within some per cent of a sum of their
 * own. Other plastics as far as they are alike across layers.
 */
export function solidGives(
  anchors: ReadonlyMap<string, readonly SolidAnchor[]>,
  { loadN, tipG }: GivesLoad,
): GivesOf {
  return ({ recipe, material, massG }) => {
    const across = acrossShareOf(material)
    const own = (anchors.get(geometryKey(recipe)) ?? [])
      .filter(({ acrossShare }) => Math.abs(acrossShare - across) < 1e-9)
      .toSorted((a, b) => a.infillPct - b.infillPct)
    const carries = (infillPct: number): number =>
      infillStiffnessAlong(recipe.pattern, infillPct / 100, 0) +
      infillStiffnessAlong(recipe.pattern, infillPct / 100, 45)
    const above = own.findIndex(({ infillPct }) => infillPct >= recipe.infillPct)
    const high = own[above]
    if (high === undefined) return null
    const low = high.infillPct === recipe.infillPct ? high : own[above - 1]
    if (low === undefined) return null
    const [from, to] = [carries(low.infillPct), carries(high.infillPct)]
    const on = to > from ? (carries(recipe.infillPct) - from) / (to - from) : 0
    // N/mm at 1 GPa, and what of the piece swings with its tip: both of each sum alone.
    const stiff = (one: SolidAnchor): number => loadN / one.deflectionMm / one.youngsGPa
    const stiffness = material.youngsGPa.value * (stiff(low) + on * (stiff(high) - stiff(low)))
    const swings = (one: SolidAnchor): number | null => {
      if (one.firstHz === null) return null
      const allG = (1e6 * stiff(one) * one.youngsGPa) / (2 * Math.PI * one.firstHz) ** 2
      return (allG - tipG) / one.massG
    }
    const shares = [swings(low), swings(high)]
    const [a = null, b = null] = shares
    return {
      deflectionMm: loadN / stiffness,
      firstHz:
        a === null || b === null
          ? null
          : Math.sqrt((1e6 * stiffness) / (tipG + massG * (a + on * (b - a)))) / (2 * Math.PI),
    }
  }
}
