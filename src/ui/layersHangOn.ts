import type { Part } from '../core/model/frame.ts'

/**
 * What a part's layers hang on besides its recipe: where all of it is the same, so is what was
 * counted, cut or solved of the part with one recipe.
 */
export function layersHangOn({ meshHash, unit, pose, zones, keepsHairs }: Part) {
  return { meshHash, unit, pose, zones, keepsHairs }
}
