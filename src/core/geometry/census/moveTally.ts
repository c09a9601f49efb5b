import type { CensusMoves, LineTable, TravelTable } from '../../moves.ts'
import type { GeometrySettings } from '../../settings.ts'
import type { CutLayer } from './cutLayer.ts'
import type { LayerAreas } from './layerAreas.ts'
import { ROOM_STEPS, SKIN_STEPS } from './layerAreas.ts'
import type { Boundary } from './rooms.ts'
import type { Seams } from './seams.ts'
import { findSeams, turnsOf } from './seams.ts'
import type { LengthTally } from './tally.ts'
import { addTally, createTally, tallyTable } from './tally.ts'
import type { Place } from './travel.ts'
import { visitWalls, visitZigzags } from './travel.ts'
import type { OutlineRuns } from './wallRuns.ts'
import { createRunTally, findWallRuns } from './wallRuns.ts'

/** Gathers the moves of all layers. */
export interface MoveTally {
  add(layer: CutLayer, areas: LayerAreas): void
  finish(): CensusMoves
}

/** Moves without plastic over one layer. */
interface Hops {
  readonly wall: LengthTally
  readonly skin: LengthTally
  /** One a spacing. */
  readonly room: readonly LengthTally[]
}

interface Tour {
  readonly from: Place
  readonly to: Place
  readonly hops: Hops
}

/** The next layer begins where infill at this one of the spacings ends. */
const USUAL_SPACING = 2

const createHops = (): Hops => ({
  wall: createTally(),
  skin: createTally(),
  room: ROOM_STEPS.map(createTally),
})

/**
 * The head goes over each layer as it would when printing: walls, then skin, then infill, always to the nearest next line.
 * Layers come from the top down, which makes no difference to how far it has to go. A layer like one gone over before, begun
 * at the same place, is not gone over again.
 */
export function createMoveTally(settings: GeometrySettings): MoveTally {
  const runs = createRunTally()
  const skin = createTally()
  const room = createTally()
  const hops = createHops()
  const walked = { skin: 0, room: 0 }
  const seen = { skin: 0, room: 0 }
  const tours = new WeakMap<LayerAreas, Tour[]>()
  let here: Place = { x: 0, y: 0 }
  let known: { shape: number; runs: OutlineRuns; seams: Seams } | null = null
  return {
    add(layer, areas) {
      if (known?.shape !== layer.shape) {
        const turns = turnsOf(layer.outline)
        known = {
          shape: layer.shape,
          runs: findWallRuns(layer.outline, turns),
          seams: findSeams(layer.outline, turns),
        }
      }
      const before = tours.get(areas) ?? []
      let tour = before.find(({ from }) => Math.hypot(from.x - here.x, from.y - here.y) < 1e-6)
      if (!tour) {
        tour = goOver(known.seams, areas, settings, here)
        tours.set(areas, [...before, tour])
      }
      here = tour.to
      if (settings.walls > 0) runs.add(known.runs)
      addTally(hops.wall, tour.hops.wall)
      addTally(hops.skin, tour.hops.skin)
      tour.hops.room.forEach((tally, i) => addTally(hops.room[i]!, tally))
      addTally(skin, areas.skinLines.tally)
      addTally(room, areas.roomLines.tally)
      walked.skin += areas.skinBoundary.walkMm
      seen.skin += areas.skinBoundary.seenMm
      walked.room += areas.roomWalkMm
      seen.room += areas.roomSeenMm
    },
    finish() {
      const { tables, lapMm } = runs.finish()
      return {
        wall: tables,
        wallLapMm: lapMm,
        skin: lineTable(skin, walked.skin, seen.skin, settings, SKIN_STEPS, [hops.skin]),
        room: lineTable(room, walked.room, seen.room, settings, ROOM_STEPS, hops.room),
        travel: travelTable(hops.wall),
      }
    },
  }
}

function goOver(seams: Seams, areas: LayerAreas, settings: GeometrySettings, from: Place): Tour {
  const hops = createHops()
  const here = { ...from }
  if (settings.walls > 0) visitWalls(seams, settings.walls, settings.lineMm, here, hops.wall)
  for (const ways of areas.skinLines.zigzags) visitZigzags(ways, here, hops.skin)
  let to = here
  areas.roomLines.zigzags.forEach((ways, i) => {
    const end = { ...here }
    visitZigzags(ways, end, hops.room[i]!)
    if (i === USUAL_SPACING) to = end
  })
  return { from, to, hops }
}

function travelTable(tally: LengthTally): TravelTable {
  const { lengthMm, weight } = tallyTable(tally)
  return { lengthMm, count: weight }
}

function lineTable(
  tally: LengthTally,
  walkedMm: Boundary['walkMm'],
  seenMm: Boundary['seenMm'],
  settings: GeometrySettings,
  steps: readonly number[],
  hops: readonly LengthTally[],
): LineTable {
  const { lengthMm, weight } = tallyTable(tally)
  return {
    lengthMm,
    acrossMm: weight,
    slant: walkedMm / seenMm || 1,
    zigzags: steps.map((step, i) => ({
      spacingMm: step * settings.lineMm,
      hops: travelTable(hops[i]!),
    })),
  }
}
