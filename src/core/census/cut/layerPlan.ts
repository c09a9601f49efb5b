import { PreweighError } from '../../model/problem.ts'

/** Where each layer lies and where it is cut; bottom first. mm above the bed. */
export interface LayerPlan {
  readonly count: number
  /** Height of each layer; the last is only as high as the part still is. */
  readonly heightMm: Float64Array
  /** Height of the cut: half-way up the layer. */
  readonly cutMm: Float64Array
}

/** More layers than any printer in reach: a slip in the units or the layer height. */
const MOST_LAYERS = 20_000

/** A remainder thinner than this share of a layer is rounding in the file, not a layer. */
const LEAST_REMAINDER = 0.01

/**
 * Layers of a part `heightMm` tall: as many as it takes to reach the top, so 2.00 mm at 0.15 mm is 14 layers.
 * The last layer's height is clipped to the part, which keeps Σ area × height true to the volume.
 * @throws PreweighError `bad-settings` for heights that are not above 0, `too-many-layers` above 20,000.
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
  const count = heightMm > 0 ? 1 + Math.max(0, Math.ceil(above - LEAST_REMAINDER)) : 0
  if (count > MOST_LAYERS) {
    throw new PreweighError(
      'too-many-layers',
      `The part is ${heightMm.toFixed(0)} mm tall and would need ${count} layers of ${layerMm} mm; ${MOST_LAYERS} is the most that is counted.`,
      'Check the unit of the file and the layer height.',
    )
  }
  const heights = new Float64Array(count)
  const cuts = new Float64Array(count)
  let floor = 0
  for (let layer = 0; layer < count; layer++) {
    const roof = layer === count - 1 ? heightMm : firstLayerMm + layer * layerMm
    heights[layer] = roof - floor
    cuts[layer] = (floor + roof) / 2
    floor = roof
  }
  return { count, heightMm: heights, cutMm: cuts }
}
