import type { LayerAreas } from '../areas/layerAreas.ts'
import type { LayerProfile } from './layerProfile.ts'

/**
 * The areas of layer `to`, taken to be laid as layer `from` was: walls by their outlines, what they
 * enclose by its area.
 */
export function scaleAreas(
  areas: LayerAreas,
  { areaMm2, lengthMm }: LayerProfile,
  from: number,
  to: number,
): LayerAreas {
  if (from === to) return areas
  const whole = areas.areaMm2 * ratio(areaMm2[to]!, areaMm2[from]!)
  const walls = Math.min(1, ratio(areas.wallMm2, areas.areaMm2))
  const wallMm2 = Math.min(
    areas.wallMm2 * ratio(lengthMm[to]!, lengthMm[from]!),
    // Walls that fill their layer fill this one too.
    whole * Math.max(walls, MOST_WALLS),
  )
  const inside = ratio(whole - wallMm2, areas.areaMm2 - areas.wallMm2)
  const edge = Math.sqrt(Math.max(0, inside))
  return {
    ...areas,
    areaMm2: whole,
    wallMm2,
    gapMm2: areas.gapMm2 * ratio(wallMm2, areas.wallMm2),
    skinMm2: areas.skinMm2 * inside,
    roomMm2: areas.roomMm2 * inside,
    roomSeenMm: areas.roomSeenMm * edge,
    roomWalkMm: areas.roomWalkMm * edge,
    roomEdgeMm: areas.roomEdgeMm * edge,
    heldMm2: areas.heldMm2 * inside,
    overlapMm2: areas.overlapMm2 * inside,
    roomOverlapMm2: areas.roomOverlapMm2 * inside,
    smallSolidMm2: areas.smallSolidMm2 * inside,
    thinMm2: areas.thinMm2 * ratio(wallMm2, areas.wallMm2),
    smallSparseMm2: areas.smallSparseMm2 * inside,
  }
}

/** Walls of a layer that has room for more fill no more of another than this. Share. */
const MOST_WALLS = 0.95

function ratio(one: number, other: number): number {
  return other > 1e-9 ? one / other : 1
}
