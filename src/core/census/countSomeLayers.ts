import type { Census, CensusLayers } from '../model/census.ts'
import type { Mesh } from '../model/mesh.ts'
import type { GeometrySettings } from '../model/settings.ts'
import { brimAreaMm2 } from './areas/brim.ts'
import { createHabitTally, type HabitTally } from './areas/habitTally.ts'
import type { LayerAreas } from './areas/layerAreas.ts'
import { measureLayer } from './areas/layerAreas.ts'
import { emptyLayers, sumUp, writeLayer } from './areas/layerTable.ts'
import { layingOf } from './areas/laying.ts'
import type { SkinReach } from './areas/skinReach.ts'
import { skinReachOf } from './areas/skinReach.ts'
import { createSupportColumns } from './areas/support.ts'
import { createZoneCounts } from './areas/zone.ts'
import type { Pick } from './coarse/doubtOfPicks.ts'
import { doubtOfPicks } from './coarse/doubtOfPicks.ts'
import { profileLayers } from './coarse/layerProfile.ts'
import type { LayerProfile } from './coarse/layerProfile.ts'
import type { Kind } from './coarse/pickLayers.ts'
import { FEW_OF, pickLayers } from './coarse/pickLayers.ts'
import { scaleAreas } from './coarse/scaleAreas.ts'
import type { CutLayer } from './cut/cutLayer.ts'
import { prepare } from './cut/prepare.ts'
import { strandsInAir } from './habits/strands.ts'
import { createMoveTally } from './moves/moveTally.ts'

interface Counted extends Pick {
  readonly layer: CutLayer
  /** See `strandsInAir`; null where the layer beneath was not looked at. */
  readonly airMm2: number | null
}

/** One in so many layers of a kind is counted: about a fifth of the time of all. */
const EVERY = 8

/**
 * A first census from about every 8th layer, in about a fifth of the time. Area, outline and bare
 * faces of all layers are known from the triangles alone (`profileLayers`); layers alike in them
 * are one kind, some of each kind are counted, and the others get their walls, skins and rooms,
 * scaled to their own outline and area. So the whole area is that of all layers, whatever period
 * the part has. A place is skin when the outermost or the smallest of the layers that must cover it
 * leaves it open.
 *
 * What that may be wrong by is told in `coarseMm3` and `coarseSupportMm3`; see `doubtOfPicks`.
 *
 * @param known the profile of its layers, where it is at hand.
 * @throws PreweighError as `countAllLayers`.
 */
export function countSomeLayers(
  mesh: Mesh,
  settings: GeometrySettings,
  zones: readonly Mesh[] = [],
  every = EVERY,
  pitchTimes = 1,
  known?: LayerProfile,
): Census {
  const { plan, grids, cut, cutOther, overhang } = prepare(mesh, settings, pitchTimes)
  const { topSkins, layerMm, firstLayerMm } = settings
  const reach = skinReachOf(settings)
  const profile = known ?? profileLayers(mesh, plan)
  const kinds = pickLayers(profile, reach, every)
  const laying = layingOf(settings, layerMm, false)
  const layingFirst = layingOf(settings, firstLayerMm, true)
  const asked = neighboursOf(kinds, profile, reach, every >= FEW_OF)
  const alongOf = new Map(
    kinds.flatMap(({ blocks }) => blocks.map(({ counted: at, along }) => [at, along] as const)),
  )
  const lowerColumns = createSupportColumns(grids)
  const counted = new Map<number, Counted>()
  const kept = new Map<number, CutLayer>()
  const columns = new Map<number, number>()
  const ledges = settings.supports ? ledgesIn(profile, every) : []
  const due = [...new Set([0, ...asked.keys(), ...[...asked.values()].flat(), ...ledges])]
    .filter((layer) => layer >= 0 && layer < plan.count)
    .sort((a, b) => b - a)
  let bridged = 0
  let length = 0
  let columnsMm2 = 0
  let brimMm3 = 0
  let next = 0
  let higher = -1
  const cutDownTo = (lowest: number): void => {
    for (; next < due.length && due[next]! >= lowest; next++) {
      const index = due[next]!
      const layer = cut(index)
      kept.set(index, layer)
      bridged += layer.bridgedMm
      length += layer.lengthMm
      if (settings.supports && higher >= 0) {
        columnsMm2 = lowerColumns(kept.get(higher)!, layer, (higher - index) * layerMm * overhang)
      }
      columns.set(index, columnsMm2)
      higher = index
      if (index === 0) brimMm3 = brimAreaMm2(layer, settings.brimMm, grids) * plan.heightMm[0]!
    }
  }
  for (const index of [...asked.keys()].sort((a, b) => b - a)) {
    const around = asked.get(index)!
    cutDownTo(Math.max(0, Math.min(index, ...around)))
    const layer = kept.get(index)!
    const neighbours = around.map((each) => kept.get(each) ?? null)
    const along = alongOf.get(index)!
    const own = index === 0 ? layingFirst : laying
    const areas = measureLayer(layer, neighbours, along, own, grids)
    const beneath = around.includes(index - 1) ? kept.get(index - 1) : undefined
    const airMm2 = beneath ? strandsInAir(areas, along, beneath) : null
    counted.set(index, { layer, areas, airMm2, columnsMm2: columns.get(index)! })
    for (const each of kept.keys())
      if (each > index + topSkins && each !== higher) kept.delete(each)
  }
  cutDownTo(0)

  const standsFor = new Int32Array(plan.count)
  for (const { blocks } of kinds) {
    for (const block of blocks) for (const layer of block.layers) standsFor[layer] = block.counted
  }
  const zoneCounts = createZoneCounts(zones.map(cutOther), plan, grids, settings)
  const moves = createMoveTally(settings)
  const byHabit = createHabitTally(plan.tie)
  const layers = emptyLayers(plan.count, plan.heightMm)
  for (let i = plan.count - 1; i >= 0; i--) {
    const pick = standsFor[i]!
    const one = counted.get(pick)!
    const areas = scaleAreas(one.areas, profile, pick, i)
    const outside = zoneCounts.partOff(i, areas)
    writeLayer(layers, i, outside)
    layers.supportMm2[i] = one.columnsMm2
    moves.add(one.layer, withRoomOf(one.areas, areas, outside), outside)
    byHabit.add(areas, plan.heightMm[i]!)
  }
  addStrands(layers, profile, topSkins)
  if (!settings.supports) {
    const airOf = (i: number) => ({ ...counted.get(standsFor[i]!)!, pick: standsFor[i]! })
    addAir(layers, profile, byHabit, airOf)
  }
  const doubtful = length > 0 ? bridged / length : 0
  const census = sumUp(layers, moves.finish(), brimMm3, doubtful, byHabit.finish())
  const doubt = doubtOfPicks(kinds, profile, counted, layers)
  return { ...census, ...doubt, zones: zoneCounts.finish() }
}

/** Undersides at least this large, as a share of the largest layer, are where columns begin. */
const LEDGE = 0.05

/** Layers just above and below the large undersides, the largest of them: supports begin there. */
function ledgesIn({ areaMm2, downMm2 }: LayerProfile, every: number): readonly number[] {
  const count = areaMm2.length
  const largest = areaMm2.reduce((most, mm2) => Math.max(most, mm2), 0)
  const found = Array.from({ length: Math.max(0, count - 1) }, (_, i) => i + 1)
    .filter((gap) => downMm2[gap]! > LEDGE * largest)
    .sort((a, b) => downMm2[b]! - downMm2[a]!)
  return found.slice(0, Math.ceil(count / every)).flatMap((gap) => [gap, gap - 1])
}

/** The areas that were counted with as much of their room as is left outside of a zone. */
function withRoomOf(counted: LayerAreas, scaled: LayerAreas, outside: LayerAreas): LayerAreas {
  if (outside === scaled) return counted
  const left = scaled.roomMm2 > 0 ? outside.roomMm2 / scaled.roomMm2 : 0
  return { ...counted, room: outside.room, rooms: outside.rooms, roomMm2: left * counted.roomMm2 }
}

/**
 * Faces that no growing or shrinking of the layer explains are worth a look at one more neighbour.
 * Share of its area.
 */
const WORTH_A_LOOK = 0.03

/**
 * For each layer to be counted, those that must cover it and are looked at: numbers beyond the part
 * stand for air. Where few layers of many are counted the outermost have to do.
 */
function neighboursOf(
  kinds: readonly Kind[],
  { areaMm2, upMm2, downMm2 }: LayerProfile,
  { above, below, under }: SkinReach,
  areFew: boolean,
): ReadonlyMap<number, readonly number[]> {
  const count = areaMm2.length
  const asked = new Map<number, readonly number[]>()
  for (const { blocks } of kinds) {
    for (const { counted } of blocks) {
      const around = new Set<number>()
      const lower = counted < below ? below : Math.min(under, counted)
      for (const [sense, far, facesMm2] of [
        [1, above, upMm2],
        [-1, lower, downMm2],
      ] as const) {
        if (far === 0) continue
        around.add(counted + sense * far)
        if (areFew) continue
        let least = counted + sense
        let bareMm2 = 0
        for (let step = 1; step <= far; step++) {
          const at = counted + sense * step
          bareMm2 += facesMm2[sense > 0 ? at : at + 1] ?? 0
          if (at >= 0 && at < count && areaMm2[at]! < areaMm2[least]!) least = at
        }
        around.add(least)
        const shrinksMm2 = Math.max(0, areaMm2[counted]! - (areaMm2[least] ?? 0))
        if (bareMm2 - shrinksMm2 > WORTH_A_LOOK * areaMm2[counted]!) {
          around.add(counted + sense * Math.ceil(far / 2))
        }
        const beneathMm2 = sense < 0 && counted > 0 ? downMm2[counted]! : 0
        if (beneathMm2 > WORTH_A_LOOK * areaMm2[counted]!) around.add(counted - 1)
      }
      asked.set(counted, [...around])
    }
  }
  return asked
}

/**
 * What is room in the layer beneath and solid in this one is laid as strands; see `strandsOver`.
 * Rooms that shrink tell of it, and so do faces that look up as many layers higher as there are
 * skins, where rooms shrink on one side and grow on another.
 */
function addStrands(
  { count, areaMm2, roomMm2, skinMm2, strandMm2 }: CensusLayers,
  { upMm2 }: LayerProfile,
  above: number,
): void {
  for (let i = 1; i < count; i++) {
    const shrunkMm2 = Math.max(0, roomMm2[i - 1]! - roomMm2[i]!)
    const sparse = areaMm2[i - 1]! > 0 ? roomMm2[i - 1]! / areaMm2[i - 1]! : 0
    const roofMm2 = (upMm2[i + above] ?? 0) * sparse
    strandMm2[i] = Math.min(skinMm2[i]!, Math.max(shrunkMm2, above > 0 ? roofMm2 : 0))
  }
}

/**
 * What of the undersides in the air lies inside the walls is laid as strands too; see
 * `strandsInAir`. Where a counted layer was held against the one beneath it, its kind has as much
 * by its faces that look down. Elsewhere undersides no wider than the walls lie below them: slopes
 * have none, a shelf has all but its walls.
 */
function addAir(
  { count, wallMm2, skinMm2, strandMm2, heightMm }: CensusLayers,
  { downMm2 }: LayerProfile,
  byHabit: HabitTally,
  airOf: (layer: number) => { readonly airMm2: number | null; readonly pick: number },
): void {
  for (let i = 1; i < count; i++) {
    const { airMm2: seenMm2, pick } = airOf(i)
    const facing = downMm2[pick]! > 0 ? downMm2[i]! / downMm2[pick]! : 0
    const likelyMm2 = seenMm2 === null ? downMm2[i]! - wallMm2[i]! : seenMm2 * facing
    const airMm2 = Math.min(skinMm2[i]! - strandMm2[i]!, likelyMm2)
    if (!(airMm2 > 0)) continue
    strandMm2[i] = strandMm2[i]! + airMm2
    byHabit.addAir(airMm2 * heightMm[i]!)
  }
}
