import type { Census } from '../model/census.ts'
import type { LaidRecipe } from '../model/settings.ts'
import { laidStrandMm3, SUPPORT_SHARE, type Deposit } from './deposit.ts'
import { infillOn, roomsOf } from './infill.ts'

/** Plastic by kind, mm³, as the space it fills on the part. */
export type LaidVolumes = Pick<
  Deposit,
  'wallMm3' | 'gapMm3' | 'skinMm3' | 'strandMm3' | 'infillMm3' | 'supportMm3' | 'brimMm3'
>

/**
 * What one layer (0 is the lowest) holds of one piece; all layers together are what `depositOf`
 * says of it, but for layers that were not counted. Strands take what they come to over all layers:
 * which of them lie over air no layer tells.
 */
export function layerLaid(census: Census, recipe: LaidRecipe, layer: number): LaidVolumes {
  const { layers } = census
  const heightMm = layers.heightMm[layer] ?? 0
  const on = (areasMm2: Float64Array): number => (areasMm2[layer] ?? 0) * heightMm
  const flatMm3 = on(layers.strandMm2)
  const thin = census.strandMm3 > 0 ? laidStrandMm3(census, recipe) / census.strandMm3 : 1
  const infillMm3 = roomsOf(census, recipe).reduce(
    (sum, rooms) => sum + infillOn(rooms.census, rooms.recipe, layer, layer + 1).infillMm3,
    0,
  )
  return {
    wallMm3: on(layers.wallMm2),
    gapMm3: on(layers.gapMm2),
    skinMm3: on(layers.skinMm2) + (thin - 1) * flatMm3,
    strandMm3: thin * flatMm3,
    infillMm3,
    supportMm3: on(layers.supportMm2) * SUPPORT_SHARE,
    brimMm3: layer === 0 ? census.brimMm3 : 0,
  }
}
