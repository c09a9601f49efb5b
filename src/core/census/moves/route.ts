import type { TravelTable, Travels } from '../../model/moves.ts'
import { RETRACT_BEYOND_MM } from '../../model/moves.ts'
import type { GeometrySettings } from '../../model/settings.ts'
import type { LayerLines } from './layerLines.ts'
import { ROOM_STEPS } from './layerLines.ts'
import type { Seams } from './seams.ts'
import { addLength, createTally, tallyTable } from './tally.ts'
import type { Place } from './travel.ts'
import { visitWalls, visitZigzags, wayToWalls } from './travel.ts'

/** Where the head goes over all layers, one after the other. */
export interface Route {
  /** `other` are the lines that infill crosses with, those of a layer that runs the other way. */
  goOver(lines: LayerLines, seams: Seams, other: LayerLines | null): void
  finish(): Travels
}

/** One way over a layer. */
interface Tour {
  readonly from: Place
  readonly to: Place
  readonly other: LayerLines | null
  readonly hops: Hops
  readonly nearHops: number
  readonly farHops: number
  /** How many layers are gone over like this. */
  layers: number
}

/** Lengths of the moves without plastic over one layer. mm */
interface Hops {
  readonly wall: number[]
  readonly skin: number[]
  /** One a spacing. */
  readonly infill: readonly number[][]
  readonly back: readonly number[]
  /** Without infill. */
  readonly bareBack: number
}

/**
 * The next layer begins where infill at a usual spacing ends: lines at 25 %, or crossing lines at
 * as much.
 */
const USUAL_SPACING = ROOM_STEPS.indexOf(4)
const USUAL_CROSSED = ROOM_STEPS.indexOf(8)

/** Layers alike are gone over from at most this many places; then from the nearest of these. */
const MOST_TOURS = 2

/**
 * The head goes over each layer as it would when printing: walls, then skin, then infill, always to
 * the nearest next line. Layers come from the top down, which makes no difference to how far it has
 * to go.
 */
export function createRoute(settings: GeometrySettings): Route {
  const tours: Tour[] = []
  const known = new WeakMap<LayerLines, Tour[]>()
  const nearHops: number[] = []
  const farHops: number[] = []
  let here: Place = { x: 0, y: 0 }
  const fold = (lists: (hops: Hops) => readonly number[]): TravelTable => {
    const tally = createTally()
    for (const { hops, layers } of tours) {
      lists(hops).forEach((mm) => addLength(tally, mm, layers))
    }
    const { lengthMm, weight } = tallyTable(tally)
    return { lengthMm, count: weight }
  }
  return {
    goOver(lines, seams, other) {
      const before = known.get(lines) ?? []
      const nearest = nearestTour(before, here, other)
      let { tour } = nearest
      if (!tour || (nearest.apartMm > SAME_MM && before.length < MOST_TOURS)) {
        tour = goRound(lines, seams, other, settings, here)
        tours.push(tour)
        before.push(tour)
        known.set(lines, before)
      }
      tour.layers++
      here = tour.to
      nearHops.push(tour.nearHops)
      farHops.push(tour.farHops)
    },
    finish: () => ({
      wall: fold(({ wall }) => wall),
      skin: fold(({ skin }) => skin),
      nearHops: Float32Array.from(nearHops.toReversed()),
      farHops: Float32Array.from(farHops.toReversed()),
      back: fold(({ bareBack }) => [bareBack]),
      infill: ROOM_STEPS.map((step, i) => ({
        spacingMm: step * settings.lineMm,
        hops: fold(({ infill }) => infill[i]!),
        back: fold(({ back }) => [back[i]!]),
      })),
    }),
  }
}

const SAME_MM = 1e-6

function nearestTour(
  tours: readonly Tour[],
  here: Place,
  other: LayerLines | null,
): { readonly tour: Tour | null; readonly apartMm: number } {
  let best: Tour | null = null
  let bestMm = Infinity
  for (const tour of tours) {
    if (tour.other !== other) continue
    const x = tour.from.x - here.x
    const y = tour.from.y - here.y
    const mm = Math.sqrt(x * x + y * y)
    if (mm >= bestMm) continue
    best = tour
    bestMm = mm
  }
  return { tour: best, apartMm: bestMm }
}

function goRound(
  { areas, skin, room }: LayerLines,
  seams: Seams,
  other: LayerLines | null,
  { walls, lineMm }: GeometrySettings,
  from: Place,
): Tour {
  const wall: number[] = []
  const skins: number[] = []
  const infill: number[][] = ROOM_STEPS.map(() => [])
  const back: number[] = []
  const here = { ...from }
  if (walls > 0) visitWalls(seams, walls, lineMm, here, wall)
  for (const ways of skin.zigzags) visitZigzags(ways, here, skins)
  // Of crossing lines those along x come first.
  const first = areas.grid.along === 0 || !other ? room : other.room
  const second = areas.grid.along === 0 && other ? other.room : room
  const usual = other ? USUAL_CROSSED : USUAL_SPACING
  let to = here
  for (let i = 0; i < ROOM_STEPS.length; i++) {
    const end = { ...here }
    visitZigzags(first.zigzags[i]!, end, infill[i]!)
    if (other) visitZigzags(second.zigzags[i]!, end, infill[i]!)
    back.push(wayToWalls(seams, walls, lineMm, end))
    if (i === usual) to = end
  }
  const usualHops = [wall, skins, infill[usual]!, [back[usual]!]]
  const farHops = usualHops.reduce((sum, list) => sum + farIn(list), 0)
  const nearHops = usualHops.reduce((sum, list) => sum + list.length, 0) - farHops
  const bareBack = wayToWalls(seams, walls, lineMm, here)
  const hops = { wall, skin: skins, infill, back, bareBack }
  return { from, to, other, hops, nearHops, farHops, layers: 0 }
}

function farIn(hops: readonly number[]): number {
  let far = 0
  for (let i = 0; i < hops.length; i++) if (hops[i]! > RETRACT_BEYOND_MM) far++
  return far
}
