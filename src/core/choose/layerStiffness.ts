import { printedBendingNm } from '../aircraft/twin/bending.ts'
import { flatness } from '../aircraft/twin/flatness.ts'
import type { PlateOutline } from '../aircraft/twin/outline.ts'
import type { Census } from '../model/census.ts'
import type { Material } from '../model/figures.ts'
import type { Recipe } from '../model/settings.ts'
import { infillStiffnessUp } from '../stiffness/moduli/infillStiffness.ts'

/** A piece printed one way, with its layers counted. */
export interface CountedWay {
  readonly census: Census
  readonly recipe: Recipe
  readonly material: Material
}

/**
 * How stiff one piece printed that way is, in a unit of its own: only ratios between ways of one
 * part mean something, and those to about 15 % (ours; absolute ones to 30 %). Null where nothing is
 * known of it.
 */
export type StiffnessOf = (way: CountedWay) => number | null

/** What a piece's stiffness is judged by. */
export type StiffnessKind = 'bending' | 'plastic'

/**
 * What its layers alone tell of a part's stiffness, from its present count and its outline. Flat as
 * it lies, it is a stack of strips that bends along its longer side, `printedBendingNm`. Any other
 * part, which the layers do not tell how it is loaded, by the plastic that carries: E times mean
 * area of a layer, infill by its share of the room. Both rise with walls, skins and infill; neither
 * knows joints, loads or holes, which a model of the solid does.
 */
export function layerStiffness(
  present: Pick<Census, 'layers' | 'heightMm'>,
  outline: Pick<PlateOutline, 'areaMm2' | 'longDeg'> | null,
): { readonly kind: StiffnessKind; readonly stiffnessOf: StiffnessOf } {
  if (outline !== null && flatness(present).kind !== 'no') {
    return {
      kind: 'bending',
      stiffnessOf: ({ census, recipe, material }) =>
        known(printedBendingNm(census.layers, recipe, material.youngsGPa.value, outline)),
    }
  }
  return { kind: 'plastic', stiffnessOf: byPlastic }
}

/** GPa·mm². */
function byPlastic({ census, recipe, material }: CountedWay): number | null {
  const { count, heightMm, wallMm2, skinMm2, roomMm2 } = census.layers
  const core = infillStiffnessUp(recipe.pattern, recipe.infillPct / 100)
  let carriesMm3 = 0
  let highMm = 0
  for (let i = 0; i < count; i++) {
    const plastic = (wallMm2[i] ?? 0) + (skinMm2[i] ?? 0) + core * (roomMm2[i] ?? 0)
    carriesMm3 += plastic * (heightMm[i] ?? 0)
    highMm += heightMm[i] ?? 0
  }
  return highMm > 0 ? known((material.youngsGPa.value * carriesMm3) / highMm) : null
}

const known = (value: number): number | null => (value > 0 ? value : null)
