import type { CensusLayers } from '../../model/census.ts'
import type { LayerAreas } from '../areas/layerAreas.ts'
import type { LayerProfile } from './layerProfile.ts'
import type { Kind } from './pickLayers.ts'

/** A layer that was counted, with the support columns that cross it. */
export interface Pick {
  readonly areas: LayerAreas
  readonly columnsMm2: number
}

/**
 * What is taken to differ between a layer and the one that stands for it at least: share of walls
 * and skins. Ours.
 */
const LEAST = 0.06
/**
 * The same where no other layer of the kind was counted: walls, and skins where half of the layer
 * is bare. Ours.
 */
const LONE_WALLS = 0.1
const LONE_SKIN = 0.3
/** Strands are told from areas alone; so much of their own more or less may be laid. Ours. */
const STRANDS = 0.15
/** How far support columns may be off where one layer of a kind was counted. Ours. */
const LONE_SUPPORT = 0.5

/**
 * Plastic that may be laid more or less than a coarse census says, and how far its support columns
 * may be off, mm³: between two counted layers of a kind everything may change, on the mean by a
 * third of what it does from the one to the other. All of it is taken to be off the same way.
 *
 * On boxes, balls, rings, the demo's parts, shelves, combs, lattices and screws of 35 periods and
 * phases, grams came out within 2 % of the full count and within 0.3 of the way to the range's end;
 * hours with supports within 0.5 of it.
 */
export function doubtOfPicks(
  kinds: readonly Kind[],
  { areaMm2, lengthMm }: LayerProfile,
  pickOf: ReadonlyMap<number, Pick>,
  layers: CensusLayers,
): { readonly coarseMm3: number; readonly coarseSupportMm3: number } {
  let coarseMm3 = 0
  let coarseSupportMm3 = 0
  for (const { blocks, bareShare } of kinds) {
    const traits = blocks.map(({ counted }) => {
      const { areas, columnsMm2 } = pickOf.get(counted)!
      const inside = areas.skinMm2 + areas.roomMm2
      return {
        walls: areas.wallMm2 / (lengthMm[counted]! || 1),
        skin: inside > 0 ? areas.skinMm2 / inside : 1,
        whole: areas.areaMm2 / (areaMm2[counted]! || 1),
        columnsMm2,
      }
    })
    const lone = 2 * LONE_SKIN * Math.min(bareShare, 1 - bareShare)
    blocks.forEach(({ counted, layers: own }, i) => {
      const here = traits[i]!
      const beside = [traits[i - 1], traits[i + 1]].filter((one) => one !== undefined)
      const change = (pick: (one: typeof here) => number, otherwise: number): number =>
        beside.length === 0
          ? otherwise
          : Math.max(...beside.map((one) => Math.abs(pick(one) - pick(here)))) / 3
      const walls = LEAST * here.walls + change((one) => one.walls, LONE_WALLS * here.walls)
      const skin = LEAST * here.skin + change((one) => one.skin, lone)
      const whole = change((one) => one.whole, 0)
      const columns = change((one) => one.columnsMm2, LONE_SUPPORT * here.columnsMm2)
      for (const layer of own) {
        if (layer === counted) continue
        const insideMm2 = layers.skinMm2[layer]! + layers.roomMm2[layer]!
        const mm2 =
          Math.min(walls * lengthMm[layer]!, layers.areaMm2[layer]!) +
          skin * insideMm2 +
          whole * areaMm2[layer]!
        coarseMm3 += mm2 * layers.heightMm[layer]!
        coarseSupportMm3 += columns * layers.heightMm[layer]!
      }
    })
  }
  for (let i = 0; i < layers.count; i++) {
    coarseMm3 += STRANDS * layers.strandMm2[i]! * layers.heightMm[i]!
  }
  return { coarseMm3, coarseSupportMm3 }
}
