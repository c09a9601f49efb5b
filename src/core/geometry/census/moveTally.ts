import type { CensusMoves } from '../../moves.ts'
import { START_SPACINGS_MM } from '../../moves.ts'
import type { GeometrySettings } from '../../settings.ts'
import type { CutLayer } from './cutLayer.ts'
import type { LayerAreas } from './layerAreas.ts'
import type { Lines } from './lines.ts'
import { addLength, addTally, createTally, tallyTable } from './tally.ts'
import { outlineHops } from './travel.ts'
import type { OutlineRuns } from './wallRuns.ts'
import { createRunTally, findWallRuns } from './wallRuns.ts'

/** Gathers the moves of all layers. */
export interface MoveTally {
  add(layer: CutLayer, areas: LayerAreas): void
  finish(): CensusMoves
}

/**
 * Travels kept here are those between wall lines: to the nearest next outline, and from one line to the next within it.
 * Those to each new zigzag depend on the spacing and are added with it.
 */
export function createMoveTally(settings: GeometrySettings): MoveTally {
  const runs = createRunTally()
  const skin = createTally()
  const room = createTally()
  const travel = createTally()
  const starts = {
    skin: new Float32Array(START_SPACINGS_MM.length),
    room: new Float32Array(START_SPACINGS_MM.length),
  }
  const edges = { skinWalk: 0, skinSeen: 0, roomWalk: 0, roomSeen: 0 }
  let known: { shape: number; runs: OutlineRuns; hops: Float64Array } | null = null
  return {
    add(layer, areas) {
      if (known?.shape !== layer.shape) {
        known = {
          shape: layer.shape,
          runs: findWallRuns(layer.outline),
          hops: outlineHops(layer.outline),
        }
      }
      if (settings.walls > 0) {
        runs.add(known.runs)
        for (const hop of known.hops) addLength(travel, hop, 1)
        addLength(travel, settings.lineMm, areas.contours * (settings.walls - 1))
      }
      addTally(skin, areas.skinLines.tally)
      addTally(room, areas.roomLines.tally)
      edges.skinWalk += areas.skinBoundary.walkMm
      edges.skinSeen += areas.skinBoundary.seenMm
      edges.roomWalk += areas.roomWalkMm
      edges.roomSeen += areas.roomSeenMm
      areas.skinLines.starts.forEach((count, i) => (starts.skin[i]! += count))
      areas.roomLines.starts.forEach((count, i) => (starts.room[i]! += count))
    },
    finish() {
      const { tables, lapMm } = runs.finish()
      const hops = tallyTable(travel)
      const lines = (tally: Lines['tally'], begun: Float32Array, slant: number) => {
        const { lengthMm, weight } = tallyTable(tally)
        return { lengthMm, acrossMm: weight, starts: begun, slant }
      }
      return {
        wall: tables,
        wallLapMm: lapMm,
        skin: lines(skin, starts.skin, edges.skinWalk / edges.skinSeen || 1),
        room: lines(room, starts.room, edges.roomWalk / edges.roomSeen || 1),
        travel: { lengthMm: hops.lengthMm, count: hops.weight },
      }
    },
  }
}
