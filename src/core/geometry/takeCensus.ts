import type { Census, CensusLayers } from '../census.ts'
import type { Mesh } from '../mesh.ts'
import type { CensusMoves } from '../moves.ts'
import { PreweighError } from '../problem.ts'
import type { GeometrySettings } from '../settings.ts'
import { brimAreaMm2 } from './census/brim.ts'
import type { CutLayer, Grids } from './census/cutLayer.ts'
import { createLayerCutter } from './census/cutLayer.ts'
import type { LayerAreas } from './census/layerAreas.ts'
import { measureLayer } from './census/layerAreas.ts'
import { createMoveTally } from './census/moveTally.ts'
import { planLayers } from './census/layerPlan.ts'
import { planGrid, SCAN_TILT_DEG } from './census/scanGrid.ts'
import type { ScanFrame } from './census/slice.ts'
import { createSlicer } from './census/slice.ts'
import { createSupportColumns } from './census/support.ts'

const TILT = (SCAN_TILT_DEG * Math.PI) / 180
const FRAME: ScanFrame = { cos: Math.cos(TILT), sin: Math.sin(TILT) }

/**
 * Counts what the layers of a placed mesh (mm, lowest z at 0) hold.
 *
 * Regions are kept as stretches on parallel rows: along a row every boundary is exact, across rows it is sampled, with an
 * error that falls with the square of the pitch. Booleans on sorted stretches need no tolerance and cannot fail on a mesh
 * that crosses itself. Even layers are scanned along x, odd ones along y. Layers of equal shape share their scan, and a
 * layer whose whole neighbourhood repeats is copied.
 *
 * @param onProgress called after each layer with the share done, 0–1.
 * @throws PreweighError `no-volume` when no layer encloses anything, `too-many-layers`, `bad-settings`.
 */
export function takeCensus(
  mesh: Mesh,
  settings: GeometrySettings,
  onProgress?: (fraction: number) => void,
): Census {
  const extent = extentInFrame(mesh)
  const plan = planLayers(extent.heightMm, settings.layerMm, settings.firstLayerMm)
  const supportStep = Math.tan((settings.supportAngleDeg * Math.PI) / 180)
  const margin = Math.max(settings.brimMm, settings.supports ? settings.layerMm * supportStep : 0)
  const grids: Grids = [
    planGrid(0, extent.vLow, extent.vHigh, margin),
    planGrid(1, extent.uLow, extent.uHigh, margin),
  ]
  const slice = createSlicer(mesh, plan, FRAME)
  const cutLayer = createLayerCutter(grids)
  const lowerColumns = createSupportColumns(grids)
  const moves = createMoveTally(settings)
  const layers = emptyLayers(plan.count, plan.heightMm)
  const above = settings.topSkins
  const below = Math.max(settings.bottomSkins, settings.supports ? 1 : 0)
  const wallMm = settings.walls * settings.lineMm
  const kept = new Map<number, CutLayer>()
  const done: [Remembered | null, Remembered | null] = [null, null]
  let brimMm3 = 0
  let bridged = 0
  let length = 0

  for (let top = plan.count - 1 + below; top >= 0; top--) {
    // Layer `cut` is new; layer `top − …` now has every neighbour it needs.
    const cutIndex = top - below
    if (cutIndex >= 0) {
      const cut = cutLayer(slice(cutIndex))
      kept.set(cutIndex, cut)
      bridged += cut.bridgedMm * plan.heightMm[cutIndex]!
      length += cut.lengthMm * plan.heightMm[cutIndex]!
    }
    kept.delete(top + above + 1)
    const layer = kept.get(top)
    if (!layer) continue
    const along = (top & 1) as 0 | 1
    const neighbours = around(kept, top, settings.bottomSkins, above)
    const known = done[along]
    const areas =
      known && known.layer === layer && sameList(known.neighbours, neighbours)
        ? known.areas
        : measureLayer(layer, neighbours, along, wallMm, settings.lineMm, grids)
    done[along] = { layer, neighbours, areas }
    writeLayer(layers, top, areas)
    moves.add(layer, areas)
    const beneath = kept.get(top - 1)
    if (settings.supports && beneath) {
      const stepMm = plan.heightMm[top]! * supportStep
      layers.supportMm2[top - 1] = lowerColumns(layer, beneath, stepMm)
    }
    if (top === 0) brimMm3 = brimAreaMm2(layer, settings.brimMm, grids) * plan.heightMm[0]!
    onProgress?.((plan.count - top) / plan.count)
  }
  const census = sumUp(layers, moves.finish(), brimMm3, length > 0 ? bridged / length : 0)
  if (!(census.modelMm3 > 0)) {
    throw new PreweighError(
      'no-volume',
      `None of the ${plan.count} layers encloses any area.`,
      'The mesh is a surface without an inside, or thinner than it can be measured. Give it thickness in the program that made it.',
    )
  }
  return census
}

interface Remembered {
  readonly layer: CutLayer
  readonly neighbours: readonly (CutLayer | null)[]
  readonly areas: LayerAreas
}

function around(
  kept: ReadonlyMap<number, CutLayer>,
  layer: number,
  below: number,
  above: number,
): (CutLayer | null)[] {
  const list: (CutLayer | null)[] = []
  for (let i = layer + above; i >= layer - below; i--) {
    if (i !== layer) list.push(kept.get(i) ?? null)
  }
  return list
}

function sameList<T>(a: readonly T[], b: readonly T[]): boolean {
  return a.length === b.length && a.every((value, i) => value === b[i])
}

function emptyLayers(count: number, heightMm: Float64Array): CensusLayers {
  return {
    count,
    heightMm,
    areaMm2: new Float64Array(count),
    wallMm2: new Float64Array(count),
    skinMm2: new Float64Array(count),
    roomMm2: new Float64Array(count),
    supportMm2: new Float64Array(count),
    roomSeenMm: new Float64Array(count),
    roomWalkMm: new Float64Array(count),
    rooms: new Uint32Array(count),
    contours: new Uint32Array(count),
    islands: new Uint32Array(count),
  }
}

function writeLayer(layers: CensusLayers, layer: number, areas: LayerAreas): void {
  layers.areaMm2[layer] = areas.areaMm2
  layers.wallMm2[layer] = areas.wallMm2
  layers.skinMm2[layer] = areas.skinMm2
  layers.roomMm2[layer] = areas.roomMm2
  layers.roomSeenMm[layer] = areas.roomSeenMm
  layers.roomWalkMm[layer] = areas.roomWalkMm
  layers.rooms[layer] = areas.rooms
  layers.contours[layer] = areas.contours
  layers.islands[layer] = areas.islands
}

function sumUp(
  layers: CensusLayers,
  moves: CensusMoves,
  brimMm3: number,
  doubtfulShare: number,
): Census {
  const volume = (areas: Float64Array): number => {
    let sum = 0
    for (let i = 0; i < layers.count; i++) sum += areas[i]! * layers.heightMm[i]!
    return sum
  }
  return {
    layers,
    modelMm3: volume(layers.areaMm2),
    wallMm3: volume(layers.wallMm2),
    skinMm3: volume(layers.skinMm2),
    roomMm3: volume(layers.roomMm2),
    supportMm3: volume(layers.supportMm2),
    brimMm3,
    heightMm: layers.heightMm.reduce((sum, height) => sum + height, 0),
    doubtfulShare,
    moves,
  }
}

function extentInFrame(mesh: Mesh): {
  uLow: number
  uHigh: number
  vLow: number
  vHigh: number
  heightMm: number
} {
  let uLow = Infinity
  let uHigh = -Infinity
  let vLow = Infinity
  let vHigh = -Infinity
  let zHigh = 0
  const { positions } = mesh
  for (let i = 0; i < positions.length; i += 3) {
    const u = positions[i]! * FRAME.cos + positions[i + 1]! * FRAME.sin
    const v = positions[i + 1]! * FRAME.cos - positions[i]! * FRAME.sin
    if (u < uLow) uLow = u
    if (u > uHigh) uHigh = u
    if (v < vLow) vLow = v
    if (v > vHigh) vHigh = v
    if (positions[i + 2]! > zHigh) zHigh = positions[i + 2]!
  }
  return { uLow, uHigh, vLow, vHigh, heightMm: zHigh }
}
