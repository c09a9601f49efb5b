import { PreweighError } from '../../model/problem.ts'

/** Where each layer lies and where it is cut; bottom first. mm above the bed. */
export interface LayerPlan {
  readonly count: number
  /** Height of each layer: `layerMm` but for the first. */
  readonly heightMm: Float64Array
  /** Height of the cut: half-way up the layer. */
  readonly cutMm: Float64Array
  /** Whether the top lies in the middle of a layer: the last one might as well not be laid. */
  readonly tie: boolean
}

/** More layers than any printer in reach: a slip in the units or the layer height. */
const MOST_LAYERS = 20_000

/** Cuts stay this far below the top. */
const TOP_MM = 1e-4

/**
 * Cuts lie this much below the middles of the layers, so that a flat face in the very middle of a
 * layer ends it, top or underside, and rounding in the file does not choose. Of 27 toolpaths one
 * had a face there that mattered (1.3 % of its plastic); it was laid so.
 */
const FACE_MM = 1e-4

/**
 * Layers this close to half a layer from the top are a tie: rounding in the file would decide.
 * Share of a layer.
 */
const TIE = 0.005

/**
 * Whole layers of a part `heightMm` tall: one is laid, at full height, when its middle is inside
 * the part, so that 1.62 mm at 0.2 mm is 8 layers like 1.60 mm, and its plastic as much. A part
 * comes out too tall or too low by up to half a layer. Where the top lies in the very middle of a
 * layer, 7 layers are as good as 8; the last one is then laid, as in six toolpaths of 27 that tie.
 * Clipping the last layer to the part gave one layer too many in six others.
 * @throws PreweighError `bad-settings` for heights that are not above 0, `too-many-layers` above
 *   20,000.
 */
export function planLayers(heightMm: number, layerMm: number, firstLayerMm: number): LayerPlan {
  if (!(layerMm > 0) || !(firstLayerMm > 0)) {
    throw new PreweighError(
      'bad-settings',
      `A layer height of ${layerMm} mm (first layer ${firstLayerMm} mm) is not above 0.`,
      'Type a layer height such as 0.2 mm.',
    )
  }
  const above = (heightMm - firstLayerMm) / layerMm
  const count = heightMm > 0 ? 1 + Math.max(0, Math.floor(above + 0.5 + TIE)) : 0
  if (count > MOST_LAYERS) {
    throw new PreweighError(
      'too-many-layers',
      `The part is ${heightMm.toFixed(0)} mm tall and would need ${count} layers of ${layerMm} mm; ` +
        `${MOST_LAYERS} is the most that is counted.`,
      'Check the unit of the file and the layer height.',
    )
  }
  const heights = new Float64Array(count).fill(layerMm)
  const cuts = new Float64Array(count)
  if (count > 0) heights[0] = firstLayerMm
  for (let layer = 0; layer < count; layer++) {
    const middleMm = layer === 0 ? firstLayerMm / 2 : firstLayerMm + (layer - 0.5) * layerMm
    cuts[layer] = middleMm - FACE_MM
  }
  // A tie, or a part lower than half its first layer, is cut where the part still is.
  if (count > 0)
    cuts[count - 1] = Math.min(cuts[count - 1] ?? 0, heightMm - Math.min(TOP_MM, heightMm / 2))
  const beyond = above + 0.5 - Math.floor(above + 0.5 + TIE)
  return { count, heightMm: heights, cutMm: cuts, tie: count > 1 && Math.abs(beyond) < TIE }
}
