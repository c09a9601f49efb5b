import type { Census } from '../../model/census.ts'
import type { GeometrySettings } from '../../model/settings.ts'
import type { CutLayer, Grids } from '../cut/cutLayer.ts'
import { createHabitTally } from './habitTally.ts'
import { createLayerCutter } from '../cut/cutLayer.ts'
import type { LayerAreas } from './layerAreas.ts'
import type { LayerPlan } from '../cut/layerPlan.ts'
import { emptyLayers, sumUp, writeLayer } from './layerTable.ts'
import { createMoveTally } from '../moves/moveTally.ts'
import { measureBoundary, separatePieces } from './rooms.ts'
import { intersectAll, subtractRows } from '../rows/rowAlgebra.ts'
import { emptyRows, isEmpty, rowLengthMm } from '../rows/rowSet.ts'
import type { LayerCut } from '../cut/planeCutter.ts'

/**
 * Counts the infill room that lies inside other meshes apart, so that it can have infills of its
 * own.
 */
export interface ZoneCounts {
  /** Takes the zones' shares out of a layer's room and returns what is left of the layer. */
  partOff(layer: number, areas: LayerAreas): LayerAreas
  /** Each zone as a census that holds rooms and nothing else; null where no room lies in it. */
  finish(): readonly (Census | null)[]
}

/** Counts one zone; see `ZoneCounts`. */
interface ZoneCount {
  partOff(layer: number, areas: LayerAreas): LayerAreas
  finish(): Census | null
}

/**
 * Of zones that overlap the later one holds, as a later word overrules an earlier one: a block
 * round a whole root first, the spar in it after. `cuts` cut the zones' meshes by the same plan as
 * the part's, downwards.
 */
export function createZoneCounts(
  cuts: readonly ((layer: number) => LayerCut)[],
  plan: LayerPlan,
  grids: Grids,
  settings: GeometrySettings,
): ZoneCounts {
  const zones = cuts.map((cut) => createZoneCount(cut, plan, grids, settings))
  const latestFirst = zones.toReversed()
  return {
    partOff: (layer, areas) => latestFirst.reduce((left, zone) => zone.partOff(layer, left), areas),
    finish: () => zones.map((zone) => zone.finish()),
  }
}

function createZoneCount(
  cut: (layer: number) => LayerCut,
  plan: LayerPlan,
  grids: Grids,
  settings: GeometrySettings,
): ZoneCount {
  const toLayer = createLayerCutter(grids)
  const layers = emptyLayers(plan.count, plan.heightMm)
  const moves = createMoveTally({ ...settings, walls: 0 })
  let held: { layer: CutLayer; areas: LayerAreas; split: Split } | null = null
  let any = false
  return {
    partOff(layer, areas) {
      const zone = toLayer(cut(layer))
      if (held?.layer !== zone || held.areas !== areas) {
        held = { layer: zone, areas, split: splitRoom(areas, zone) }
      }
      const { inside, outside } = held.split
      any ||= inside.roomMm2 > 0
      writeLayer(layers, layer, inside)
      moves.add(zone, inside)
      return outside
    },
    finish: () =>
      any ? sumUp(layers, moves.finish(), 0, 0, createHabitTally(false).finish()) : null,
  }
}

interface Split {
  readonly inside: LayerAreas
  readonly outside: LayerAreas
}

function splitRoom(areas: LayerAreas, zone: CutLayer): Split {
  const { grid, room } = areas
  const inside = intersectAll(room, [zone.rows[grid.along]])
  const insideAreas = roomAreas(areas, inside)
  const outsideAreas = isEmpty(inside)
    ? areas
    : { ...areas, ...ofRoom(roomAreas(areas, subtractRows(room, inside))) }
  return { inside: { ...insideAreas, areaMm2: insideAreas.roomMm2 }, outside: outsideAreas }
}

/** A layer keeps all but this whatever becomes of its room. */
function ofRoom({ room, roomMm2, roomSeenMm, roomWalkMm, roomEdgeMm, rooms }: LayerAreas) {
  return { room, roomMm2, roomSeenMm, roomWalkMm, roomEdgeMm, rooms }
}

/** A layer of which only this part of its room is there. */
function roomAreas(areas: LayerAreas, room: LayerAreas['room']): LayerAreas {
  const { grid } = areas
  const boundary = measureBoundary(room, grid.pitchMm)
  const rows = rowLengthMm(areas.room)
  const rooms = separatePieces(room).count
  return {
    grid,
    skin: () => emptyRows(grid.rows),
    room,
    inside: areas.inside,
    areaMm2: 0,
    wallMm2: 0,
    gapMm2: 0,
    skinMm2: 0,
    roomMm2: rows > 0 ? (areas.roomMm2 * rowLengthMm(room)) / rows : 0,
    roomSeenMm: boundary.seenMm,
    roomWalkMm: boundary.walkMm,
    roomEdgeMm: boundary.edgeMm,
    rooms,
    heldMm2: 0,
    overlapMm2: 0,
    roomOverlapMm2: 0,
    smallSolidMm2: 0,
    smallSparseMm2: 0,
    thinMm2: 0,
    contours: 0,
    islands: rooms,
  }
}
