import type { SkinReach } from '../areas/skinReach.ts'
import type { LayerProfile } from './layerProfile.ts'

/**
 * Layers of one kind by their profile, taken to be alike; which of them are counted, and for how
 * many each stands.
 */
export interface Kind {
  /** Bottom first. */
  readonly blocks: readonly Block[]
  /** Share (0–1) of its layers' area that layers as near as a skin's depth may leave bare. */
  readonly bareShare: number
}

export interface Block {
  readonly counted: number
  /**
   * Which way it is scanned: by turns, for layers that run either way, but a layer that stands for
   * itself alone runs its own.
   */
  readonly along: 0 | 1
  /** All layers it stands for, itself among them; bottom first. */
  readonly layers: readonly number[]
}

/**
 * Layers of a kind differ in area and in outline by no more than this ratio; more where there would
 * be too many kinds.
 */
const RATIO = 1.2
const WIDER = 1.3
/**
 * Where only one in so many layers is counted there would be more kinds than layers to count: all
 * are one.
 */
export const FEW_OF = 64
/** Steps of the share left bare. */
const BARE_STEPS = [0.005, 0.05, 0.2, 0.5, 0.9]

/**
 * Sorts layers into kinds by what is known of all of them: area, outline, and how much the layers
 * near them leave bare. From each kind one `every` so many is counted, at a place among them that
 * is drawn anew each time: no rib or shelf comes back in step with that, and one that is in a
 * single layer is a kind of its own.
 */
export function pickLayers(
  profile: LayerProfile,
  reach: SkinReach,
  every: number,
): readonly Kind[] {
  const { areaMm2, lengthMm } = profile
  const count = areaMm2.length
  const { above, below } = reach
  const bare = bareShares(profile, reach)
  const limit = Math.max(8, count / every)
  let kinds = new Map([['all', Array.from(areaMm2, (_, layer) => layer)]])
  for (let ratio = Math.log(RATIO); ratio < 3 && every < FEW_OF; ratio *= WIDER) {
    kinds = new Map()
    for (let layer = 0; layer < count; layer++) {
      const step = (value: number): number => Math.floor(Math.log(Math.max(value, 1e-3)) / ratio)
      // The first layer has lines of its own width; near the ends all is skin, and no layer is
      // there to cover.
      const near =
        layer === 0
          ? 'first'
          : layer < below || layer >= count - above
            ? 'end'
            : BARE_STEPS.findIndex((most) => bare[layer]! <= most)
      const key = `${near} ${step(areaMm2[layer]!)} ${step(lengthMm[layer]!)}`
      const known = kinds.get(key)
      if (known) known.push(layer)
      else kinds.set(key, [layer])
    }
    if (kinds.size <= limit) break
  }
  return [...kinds.values()].map((layers) => {
    const blocks: Block[] = []
    const parts = Math.ceil(layers.length / every)
    for (let part = 0; part < parts; part++) {
      const own = layers.slice(
        Math.floor((part * layers.length) / parts),
        Math.floor(((part + 1) * layers.length) / parts),
      )
      const counted = own[Math.floor(drawn(own[0]!) * own.length)]!
      const along = ((own.length === 1 ? counted : part) & 1) as 0 | 1
      blocks.push({ counted, along, layers: own })
    }
    const sum = (values: Float64Array): number =>
      layers.reduce((total, layer) => total + values[layer]!, 0)
    const bareMm2 = layers.reduce((total, layer) => total + bare[layer]! * areaMm2[layer]!, 0)
    return { blocks, bareShare: bareMm2 / (sum(areaMm2) || 1) }
  })
}

/**
 * Of each layer's area, what the faces between it and the outermost layer that must cover it may
 * leave bare; at most all.
 */
function bareShares(
  { areaMm2, upMm2, downMm2 }: LayerProfile,
  { above, below, under }: SkinReach,
): Float64Array {
  const count = areaMm2.length
  return areaMm2.map((mm2, layer) => {
    if (layer < below || layer >= count - above) return 1
    let bareMm2 = 0
    for (let gap = layer + 1; gap <= layer + above; gap++) bareMm2 += upMm2[gap]!
    for (let gap = Math.max(1, layer - under + 1); gap <= layer; gap++) bareMm2 += downMm2[gap]!
    return Math.min(1, bareMm2 / (mm2 || 1))
  })
}

/** A number from 0 to 1 that a layer draws, the same every time. */
function drawn(layer: number): number {
  let mixed = Math.imul(layer + 1, 0x9e3779b1)
  mixed = Math.imul(mixed ^ (mixed >>> 15), 0x85ebca6b)
  mixed = Math.imul(mixed ^ (mixed >>> 13), 0xc2b2ae35)
  return ((mixed ^ (mixed >>> 16)) >>> 0) / 2 ** 32
}
