import type { CensusMoves, LineTable, MovesByLayer } from '../../model/moves.ts'
import type { GeometrySettings } from '../../model/settings.ts'
import type { CutLayer } from '../cut/cutLayer.ts'
import type { LayerAreas } from '../areas/layerAreas.ts'
import type { LayerLines } from './layerLines.ts'
import { isAlike, linesOf } from './layerLines.ts'
import type { Lines } from './lines.ts'
import type { Boundary } from '../areas/rooms.ts'
import type { RowSet } from '../rows/rowSet.ts'
import { createRoute } from './route.ts'
import type { Seams } from './seams.ts'
import { findSeams, turnsOf } from './seams.ts'
import { addTally, createTally, tallyTable } from './tally.ts'
import type { OutlineRuns } from './wallRuns.ts'
import { createRunTally, findWallRuns, lapsThatFit, wallShares } from './wallRuns.ts'

/** Gathers the moves of all layers, which come from the top down. */
export interface MoveTally {
  /** `as` are the areas that its lines stand for, where they are not its own. */
  add(layer: CutLayer, areas: LayerAreas, as?: LayerAreas): void
  finish(): CensusMoves
}

/**
 * Walls are taken as they are on every layer. Lines of skin and infill, and the ways to them, are
 * laid out anew only where a layer is not like the last one that ran the same way; else that one's
 * stand for them, as many as its areas ask for.
 */
export function createMoveTally(settings: GeometrySettings): MoveTally {
  const { lineMm, walls } = settings
  const runs = createRunTally()
  const skin = createEdgedTally()
  const room = createEdgedTally()
  const oneWay = createRoute(settings)
  const crossed = createRoute(settings)
  const byLayer = createLayerLists()
  const last: [LaidOut | undefined, LaidOut | undefined] = [undefined, undefined]
  // Layers share what they are made of with those like them, in a coarse count with some far off as
  // well.
  const outlines = new WeakMap<CutLayer, Known>()
  const laidOut = new WeakMap<RowSet, LaidOut>()
  return {
    add(layer, areas, as = areas) {
      let known = outlines.get(layer)
      if (!known) {
        const turns = turnsOf(layer.outline)
        known = { turns, runs: findWallRuns(layer.outline, turns), seams: null }
        outlines.set(layer, known)
      }
      const laps = walls > 0 ? lapsThatFit(known.runs, areas.wallMm2, walls, lineMm) : 0
      runs.add(known.runs, laps)
      const lineSumMm = (as.wallMm2 - as.gapMm2) / lineMm
      const shares = wallShares(known.runs, laps, lineMm)
      byLayer.outerMm.push(lineSumMm * shares.outer)
      byLayer.smallMm.push(lineSumMm * shares.small)
      byLayer.smallLoops.push(laps > 0 ? known.runs.small.count : 0)
      const { along } = areas.grid
      let laid = last[along]
      if (!laid || !isAlike(laid.lines.areas, areas, lineMm)) {
        laid = laidOut.get(areas.room)
        if (!laid) {
          known.seams ??= findSeams(layer.outline, known.turns, walls * lineMm)
          laid = { lines: linesOf(areas, lineMm), seams: known.seams }
          laidOut.set(areas.room, laid)
        }
        last[along] = laid
      }
      const { lines, seams } = laid
      const skinTimes = ratio(as.skinMm2, lines.areas.skinMm2)
      const roomTimes = ratio(as.roomMm2, lines.areas.roomMm2)
      skin.add(lines.skin, lines.skinBoundary, skinTimes)
      room.add(lines.room, { walkMm: as.roomWalkMm, seenMm: as.roomSeenMm }, roomTimes)
      oneWay.goOver(lines, seams, null)
      // The lines that cross this layer's are those of the layer above, which runs the other way.
      crossed.goOver(lines, seams, last[along === 0 ? 1 : 0]?.lines ?? lines)
      byLayer.skinMm.push(lines.skin.laidMm * skinTimes)
      byLayer.skinLines.push(lines.skin.count * skinTimes)
      byLayer.roomMm.push(lines.room.laidMm * roomTimes)
      byLayer.roomLines.push(lines.room.count * roomTimes)
    },
    finish() {
      const { large, small } = runs.finish()
      return {
        wall: large.tables,
        wallLapMm: large.lapMm,
        smallLoop: small.tables,
        smallLapMm: small.lapMm,
        skin: skin.finish(),
        room: room.finish(),
        oneWay: oneWay.finish(),
        crossed: crossed.finish(),
        byLayer: bottomFirst(byLayer),
      }
    },
  }
}

/** What is known of an outline. */
interface Known {
  readonly turns: Float64Array
  readonly runs: OutlineRuns
  seams: Seams | null
}

interface LaidOut {
  readonly lines: LayerLines
  readonly seams: Seams
}

const ratio = (mm2: number, ofMm2: number): number => (ofMm2 > 0 ? mm2 / ofMm2 : 0)

type LayerLists = Record<keyof MovesByLayer, number[]>

const createLayerLists = (): LayerLists => ({
  outerMm: [],
  smallMm: [],
  smallLoops: [],
  skinMm: [],
  skinLines: [],
  roomMm: [],
  roomLines: [],
})

function bottomFirst(lists: LayerLists): MovesByLayer {
  const turned = (list: number[]): Float32Array => Float32Array.from(list.toReversed())
  return {
    outerMm: turned(lists.outerMm),
    smallMm: turned(lists.smallMm),
    smallLoops: turned(lists.smallLoops),
    skinMm: turned(lists.skinMm),
    skinLines: turned(lists.skinLines),
    roomMm: turned(lists.roomMm),
    roomLines: turned(lists.roomLines),
  }
}

/** Lines and how slanted the edges they end on are. */
function createEdgedTally(): {
  add(lines: Lines, boundary: Pick<Boundary, 'walkMm' | 'seenMm'>, times: number): void
  finish(): LineTable
} {
  const tally = createTally()
  let walkMm = 0
  let seenMm = 0
  return {
    add(lines, boundary, times) {
      addTally(tally, lines.tally, times)
      walkMm += boundary.walkMm
      seenMm += boundary.seenMm
    },
    finish() {
      const { lengthMm, weight } = tallyTable(tally)
      return { lengthMm, acrossMm: weight, slant: walkMm / seenMm || 1 }
    },
  }
}
