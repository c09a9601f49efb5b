import type { CensusMoves, LineTable, MovesByLayer, TravelTable, Travels } from '../../moves.ts'
import { RETRACT_BEYOND_MM } from '../../moves.ts'
import type { GeometrySettings } from '../../settings.ts'
import type { CutLayer } from './cutLayer.ts'
import type { LayerAreas } from './layerAreas.ts'
import { ROOM_STEPS } from './layerAreas.ts'
import type { Lines } from './lines.ts'
import type { Boundary } from './rooms.ts'
import type { Seams } from './seams.ts'
import { findSeams, turnsOf } from './seams.ts'
import { addLength, addTally, createTally, tallyTable } from './tally.ts'
import type { Place } from './travel.ts'
import { visitWalls, visitZigzags } from './travel.ts'
import type { OutlineRuns } from './wallRuns.ts'
import { createRunTally, findWallRuns } from './wallRuns.ts'

/** Gathers the moves of all layers. */
export interface MoveTally {
  add(layer: CutLayer, areas: LayerAreas): void
  finish(): CensusMoves
}

/** Lengths of the moves without plastic over one layer. mm */
interface Hops {
  readonly wall: number[]
  readonly skin: number[]
  /** One list a spacing. */
  readonly infill: number[][]
}

interface Tour {
  readonly from: Place
  readonly to: Place
  /** What infill crosses with. */
  readonly other: Lines | null
  readonly hops: Hops
  readonly nearHops: number
  readonly farHops: number
  /** How many layers are gone over like this. */
  layers: number
}

/** The next layer begins where infill at this one of the spacings ends. */
const USUAL_SPACING = ROOM_STEPS.indexOf(4)

/** Gathers the moves of all layers. */
export function createMoveTally(settings: GeometrySettings): MoveTally {
  const runs = createRunTally()
  const skin = createEdgedTally()
  const room = createEdgedTally()
  const oneWay = createRoute(settings)
  const crossed = createRoute(settings)
  const byLayer = createLayerLists()
  const lastRoom: [Lines | null, Lines | null] = [null, null]
  let known: { shape: number; runs: OutlineRuns; seams: Seams } | null = null
  return {
    add(layer, areas) {
      if (known?.shape !== layer.shape) {
        const turns = turnsOf(layer.outline)
        known = {
          shape: layer.shape,
          runs: findWallRuns(layer.outline, turns),
          seams: findSeams(layer.outline, turns, settings.walls * settings.lineMm),
        }
      }
      if (settings.walls > 0) runs.add(known.runs)
      skin.add(areas.skinLines, areas.skinBoundary)
      room.add(areas.roomLines, { walkMm: areas.roomWalkMm, seenMm: areas.roomSeenMm })
      const { nearHops, farHops } = oneWay.goOver(known.seams, areas, null)
      const { skinLines, roomLines } = areas
      byLayer.skinMm.push(skinLines.laidMm)
      byLayer.skinLines.push(skinLines.count)
      byLayer.roomMm.push(roomLines.laidMm)
      byLayer.roomLines.push(roomLines.count)
      byLayer.nearHops.push(nearHops)
      byLayer.farHops.push(farHops)
      // The lines that cross this layer's are those of the layer above, which runs the other way.
      lastRoom[areas.along] = areas.roomLines
      crossed.goOver(known.seams, areas, lastRoom[1 - areas.along] ?? areas.roomLines)
    },
    finish() {
      const { tables, lapMm } = runs.finish()
      return {
        wall: tables,
        wallLapMm: lapMm,
        skin: skin.finish(),
        room: room.finish(),
        oneWay: oneWay.finish(),
        crossed: crossed.finish(),
        byLayer: bottomFirst(byLayer),
      }
    },
  }
}

type LayerLists = Record<keyof MovesByLayer, number[]>

const createLayerLists = (): LayerLists => ({
  skinMm: [],
  skinLines: [],
  roomMm: [],
  roomLines: [],
  nearHops: [],
  farHops: [],
})

/** Layers come from the top down. */
function bottomFirst(lists: LayerLists): MovesByLayer {
  const turned = (list: number[]): Float32Array => Float32Array.from(list.toReversed())
  return {
    skinMm: turned(lists.skinMm),
    skinLines: turned(lists.skinLines),
    roomMm: turned(lists.roomMm),
    roomLines: turned(lists.roomLines),
    nearHops: turned(lists.nearHops),
    farHops: turned(lists.farHops),
  }
}

/** Lines and how slanted the edges they end on are. */
function createEdgedTally(): {
  add(lines: Lines, boundary: Boundary): void
  finish(): LineTable
} {
  const tally = createTally()
  let walkMm = 0
  let seenMm = 0
  return {
    add(lines, boundary) {
      addTally(tally, lines.tally)
      walkMm += boundary.walkMm
      seenMm += boundary.seenMm
    },
    finish() {
      const { lengthMm, weight } = tallyTable(tally)
      return { lengthMm, acrossMm: weight, slant: walkMm / seenMm || 1 }
    },
  }
}

/**
 * The head goes over each layer as it would when printing: walls, then skin, then infill, always to the nearest next line.
 * Layers come from the top down, which makes no difference to how far it has to go. A layer like one gone over before, begun
 * at the same place, is not gone over again.
 */
function createRoute(settings: GeometrySettings): {
  goOver(seams: Seams, areas: LayerAreas, other: Lines | null): Tour
  finish(): Travels
} {
  const tours: Tour[] = []
  const known = new WeakMap<LayerAreas, Tour[]>()
  let here: Place = { x: 0, y: 0 }
  const fold = (lists: (hops: Hops) => readonly number[]): TravelTable => {
    const tally = createTally()
    for (const { hops, layers } of tours) {
      for (const mm of lists(hops)) addLength(tally, mm, layers)
    }
    const { lengthMm, weight } = tallyTable(tally)
    return { lengthMm, count: weight }
  }
  return {
    goOver(seams, areas, other) {
      const before = known.get(areas)
      let tour = before?.find((one) => one.other === other && isSame(one.from, here))
      if (!tour) {
        tour = goRound(seams, areas, other, settings, here)
        tours.push(tour)
        if (before) before.push(tour)
        else known.set(areas, [tour])
      }
      tour.layers++
      here = tour.to
      return tour
    },
    finish: () => ({
      wall: fold(({ wall }) => wall),
      skin: fold(({ skin }) => skin),
      infill: ROOM_STEPS.map((step, i) => ({
        spacingMm: step * settings.lineMm,
        hops: fold(({ infill }) => infill[i]!),
      })),
    }),
  }
}

const isSame = (a: Place, b: Place): boolean =>
  Math.abs(a.x - b.x) < 1e-6 && Math.abs(a.y - b.y) < 1e-6

function goRound(
  seams: Seams,
  areas: LayerAreas,
  other: Lines | null,
  { walls, lineMm }: GeometrySettings,
  from: Place,
): Tour {
  const hops: Hops = { wall: [], skin: [], infill: ROOM_STEPS.map(() => []) }
  const here = { ...from }
  if (walls > 0) visitWalls(seams, walls, lineMm, here, hops.wall)
  for (const ways of areas.skinLines.zigzags) visitZigzags(ways, here, hops.skin)
  // Of crossing lines those along x come first.
  const first = areas.along === 0 ? areas.roomLines : other
  const second = areas.along === 0 ? other : areas.roomLines
  let to = here
  for (let i = 0; i < ROOM_STEPS.length; i++) {
    const end = { ...here }
    if (first) visitZigzags(first.zigzags[i]!, end, hops.infill[i]!)
    if (second) visitZigzags(second.zigzags[i]!, end, hops.infill[i]!)
    if (i === USUAL_SPACING) to = end
  }
  let nearHops = 0
  let farHops = 0
  for (const list of [hops.wall, hops.skin, hops.infill[USUAL_SPACING]!]) {
    for (const mm of list) {
      if (mm > RETRACT_BEYOND_MM) farHops++
      else nearHops++
    }
  }
  return { from, to, other, hops, nearHops, farHops, layers: 0 }
}
