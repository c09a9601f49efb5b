import type { Census, CensusLayers } from '../model/census.ts'
import type { Mesh } from '../model/mesh.ts'
import type { GeometrySettings } from '../model/settings.ts'
import { brimAreaMm2 } from './areas/brim.ts'
import type { CutLayer } from './cut/cutLayer.ts'
import { measureLayer } from './areas/layerAreas.ts'
import { createHabitTally } from './areas/habitTally.ts'
import { layingOf } from './areas/laying.ts'
import { emptyLayers, sumUp, writeLayer } from './areas/layerTable.ts'
import { createMoveTally } from './moves/moveTally.ts'
import { prepare } from './cut/prepare.ts'
import { createSupportColumns } from './areas/support.ts'
import { createZoneCounts } from './areas/zone.ts'

/** Every how many layers one is counted. */
const STRIDE = 8

/**
 * A first census from every 8th layer, each standing for the 8 around it, in about a fifth of the time. A place is skin when
 * the outermost of the layers above and below leaves it open; those between are not looked at.
 *
 * `coarseShare` bounds what that may be wrong by: between two counted layers everything may change anywhere, so half of
 * what did change, over the volume, is in doubt.
 *
 * @throws PreweighError as `takeCensus`.
 */
export function takeCoarseCensus(
  mesh: Mesh,
  settings: GeometrySettings,
  zones: readonly Mesh[] = [],
): Census {
  const { plan, grids, cut, cutOther, overhang } = prepare(mesh, settings)
  const { topSkins: above, bottomSkins: below } = settings
  const laying = layingOf(settings, settings.layerMm, false)
  // Layers are cut downwards only, so a layer's lowest neighbour must lie above the next one's highest.
  const stride = Math.max(STRIDE, above + below)
  const zoneCounts = createZoneCounts(zones.map(cutOther), plan, grids, settings)
  const lowerColumns = createSupportColumns(grids)
  const moves = createMoveTally(settings)
  const byHabit = createHabitTally(plan.tie)
  const layers = emptyLayers(plan.count, plan.heightMm)
  const kept = new Map<number, CutLayer>()
  const layerAt = (layer: number): CutLayer | null => {
    if (layer < 0 || layer >= plan.count) return null
    const known = kept.get(layer) ?? cut(layer)
    kept.set(layer, known)
    for (const each of kept.keys()) if (each > layer + above + below) kept.delete(each)
    return known
  }
  let brimMm3 = 0
  let bridged = 0
  let length = 0
  let higher: CutLayer | null = null

  for (let top = plan.count - 1; top >= 0; top -= stride) {
    const bottom = Math.max(0, top - stride + 1)
    const middle = (top + bottom) >> 1
    const highest = above > 0 ? [layerAt(middle + above)] : []
    const layer = layerAt(middle)!
    const lowest = below > 0 ? [layerAt(middle - below)] : []
    const along = ((top / stride) & 1) as 0 | 1
    const neighbours = [...highest, ...lowest]
    const areas = measureLayer(layer, neighbours, along, laying, grids)
    const columnsMm2 =
      settings.supports && higher
        ? lowerColumns(higher, layer, stride * settings.layerMm * overhang)
        : 0
    for (let i = top; i >= bottom; i--) {
      const outside = zoneCounts.take(i, areas)
      writeLayer(layers, i, outside)
      layers.supportMm2[i] = columnsMm2
      moves.add(layer, outside)
      byHabit.add(areas, plan.heightMm[i]!)
      bridged += layer.bridgedMm * plan.heightMm[i]!
      length += layer.lengthMm * plan.heightMm[i]!
    }
    higher = layer
    if (bottom === 0) {
      const first = layerAt(0) ?? layer
      brimMm3 = brimAreaMm2(first, settings.brimMm, grids) * plan.heightMm[0]!
    }
  }
  const doubtful = length > 0 ? bridged / length : 0
  const census = sumUp(
    layers,
    moves.finish(),
    brimMm3,
    doubtful,
    coarseShare(layers),
    byHabit.finish(),
  )
  return { ...census, zones: zoneCounts.finish() }
}

function coarseShare(layers: CensusLayers): number {
  let changedMm3 = 0
  let volumeMm3 = 0
  for (let i = 0; i < layers.count; i++) {
    volumeMm3 += layers.areaMm2[i]! * layers.heightMm[i]!
    if (i === 0) continue
    const changedMm2 =
      Math.abs(layers.wallMm2[i]! - layers.wallMm2[i - 1]!) +
      Math.abs(layers.skinMm2[i]! - layers.skinMm2[i - 1]!) +
      Math.abs(layers.roomMm2[i]! - layers.roomMm2[i - 1]!)
    changedMm3 += (changedMm2 * layers.heightMm[i]! * STRIDE) / 2
  }
  return volumeMm3 > 0 ? changedMm3 / volumeMm3 : 0
}
