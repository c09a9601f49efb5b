import type { Census, CensusLayers, HabitVolumes } from '../../model/census.ts'
import type { CensusMoves } from '../../model/moves.ts'
import { PreweighError } from '../../model/problem.ts'
import type { LayerAreas } from './layerAreas.ts'

export function emptyLayers(count: number, heightMm: Float64Array): CensusLayers {
  return {
    count,
    heightMm,
    areaMm2: new Float64Array(count),
    wallMm2: new Float64Array(count),
    gapMm2: new Float64Array(count),
    skinMm2: new Float64Array(count),
    strandMm2: new Float64Array(count),
    roomMm2: new Float64Array(count),
    supportMm2: new Float64Array(count),
    roomSeenMm: new Float64Array(count),
    roomWalkMm: new Float64Array(count),
    roomEdgeMm: new Float64Array(count),
    rooms: new Uint32Array(count),
    contours: new Uint32Array(count),
    islands: new Uint32Array(count),
  }
}

export function writeLayer(layers: CensusLayers, layer: number, areas: LayerAreas): void {
  layers.areaMm2[layer] = areas.areaMm2
  layers.wallMm2[layer] = areas.wallMm2
  layers.gapMm2[layer] = areas.gapMm2
  layers.skinMm2[layer] = areas.skinMm2
  layers.roomMm2[layer] = areas.roomMm2
  layers.roomSeenMm[layer] = areas.roomSeenMm
  layers.roomWalkMm[layer] = areas.roomWalkMm
  layers.roomEdgeMm[layer] = areas.roomEdgeMm
  layers.rooms[layer] = areas.rooms
  layers.contours[layer] = areas.contours
  layers.islands[layer] = areas.islands
}

/** @throws PreweighError `no-volume` when no layer encloses anything. */
export function sumUp(
  layers: CensusLayers,
  moves: CensusMoves,
  brimMm3: number,
  doubtfulShare: number,
  byHabit: HabitVolumes,
): Census {
  const volume = (areas: Float64Array): number => {
    let sum = 0
    for (let i = 0; i < layers.count; i++) sum += areas[i]! * layers.heightMm[i]!
    return sum
  }
  const modelMm3 = volume(layers.areaMm2)
  if (!(modelMm3 > 0)) {
    throw new PreweighError(
      'no-volume',
      `None of the ${layers.count} layers encloses any area.`,
      'The mesh is a surface without an inside, or thinner than it can be measured. ' +
        'Give it thickness in the program that made it.',
    )
  }
  return {
    layers,
    modelMm3,
    wallMm3: volume(layers.wallMm2),
    gapMm3: volume(layers.gapMm2),
    skinMm3: volume(layers.skinMm2),
    strandMm3: volume(layers.strandMm2),
    roomMm3: volume(layers.roomMm2),
    supportMm3: volume(layers.supportMm2),
    brimMm3,
    heightMm: layers.heightMm.reduce((sum, height) => sum + height, 0),
    doubtfulShare,
    coarseMm3: 0,
    coarseSupportMm3: 0,
    byHabit,
    moves,
    zones: [],
  }
}
