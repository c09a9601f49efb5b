import type { CensusMoves } from '../../moves.ts'
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
 * Travels are: to the nearest next outline; from one wall line to the next within it; and to each new zigzag of skin or
 * infill, taken as half the width of a square as large as the layer.
 */
export function createMoveTally(settings: GeometrySettings): MoveTally {
  const runs = createRunTally()
  const skin = createTally()
  const room = createTally()
  const travel = createTally()
  const starts = { skin: 0, room: 0 }
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
      starts.skin += areas.skinLines.starts
      starts.room += areas.roomLines.starts
      const across = Math.sqrt(areas.areaMm2) / 2
      addLength(travel, across, 1 + areas.skinLines.starts + areas.roomLines.starts)
    },
    finish() {
      const { tables, lapMm } = runs.finish()
      const hops = tallyTable(travel)
      const lines = (tally: Lines['tally'], begun: number) => {
        const { lengthMm, weight } = tallyTable(tally)
        return { lengthMm, acrossMm: weight, starts: begun }
      }
      return {
        wall: tables,
        wallLapMm: lapMm,
        skin: lines(skin, starts.skin),
        room: lines(room, starts.room),
        travel: { lengthMm: hops.lengthMm, count: hops.weight },
      }
    },
  }
}
