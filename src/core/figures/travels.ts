import type { Census } from '../model/census.ts'
import type { Travels, TravelTable } from '../model/moves.ts'
import { RETRACT_BEYOND_MM } from '../model/moves.ts'
import type { Printer, TravelPath } from '../model/figures.ts'
import type { LaidRecipe, Recipe } from '../model/settings.ts'
import { infillSpacingMm, PATTERN_MODELS, roomsOf } from './infill.ts'
import { atSpacing, hopCount, lineCount, travelTime } from './motion.ts'
import { createMemory } from './remember.ts'

/** Seconds and the layers they are spread over: as each one's number of stops, all alike where there are none. */
export interface Spread {
  readonly seconds: number
  readonly over: Float32Array | null
}

type Measure = (table: TravelTable) => number

/** A measure of every move without plastic on a route. */
interface Measured {
  /** To walls and skins. */
  readonly shell: number
  /** Back to the walls where there is no infill. */
  readonly bare: number
  readonly infill: readonly {
    readonly spacingMm: number
    readonly zigzags: number
    readonly hops: number
    readonly back: number
  }[]
  /** Those of them that draw the filament back, or that do not, on each layer; null where there are none. */
  readonly over: Float32Array | null
}

/** Near and far, of two printers, by two routes. */
const rememberSeconds = createMemory<Measured>(8)
/** Path and retracts, by two routes. */
const rememberPath = createMemory<Measured>(4)

/** Seconds of the moves without plastic, those that draw the filament back apart from those that do not. */
export function travelSpreads(census: Census, recipe: Recipe, printer: Printer): Spread[] {
  const route = routeOf(census, recipe)
  const { travelMmS: speedMmS, travelAccelMmS2: accelMmS2, retractS } = printer
  return [false, true].map((far) => {
    const key = [route, far, speedMmS, accelMmS2, retractS]
    const seconds = rememberSeconds(census, key, () => {
      const stops = far ? route.farHops : route.nearHops
      const motion = { speedMmS, accelMmS2, retractS }
      return measured(route, (table) => travelTime(table, far, motion), stops)
    })
    return { seconds: overRoute(census, recipe, seconds), over: seconds.over }
  })
}

/**
 * The way without plastic of one piece, and how often the filament is drawn back on it; to supports
 * and brim left out.
 */
export function travelPath(census: Census, recipe: LaidRecipe): TravelPath {
  let travelMm = 0
  let retracts = 0
  for (const rooms of roomsOf(census, recipe)) {
    const route = routeOf(rooms.census, rooms.recipe)
    const of = (measure: Measure): number =>
      overRoute(
        rooms.census,
        rooms.recipe,
        rememberPath(rooms.census, [route, measure], () => measured(route, measure)),
      )
    travelMm += of(pathOf)
    retracts += of(retractsOf)
  }
  return { travelM: travelMm / 1000, retracts }
}

function pathOf({ lengthMm, count }: TravelTable): number {
  return count.reduce((sum, some, i) => sum + some * (lengthMm[i] ?? 0), 0)
}

function retractsOf({ lengthMm, count }: TravelTable): number {
  return count.reduce(
    (sum, some, i) => sum + ((lengthMm[i] ?? 0) > RETRACT_BEYOND_MM ? some : 0),
    0,
  )
}

function routeOf({ moves }: Census, { pattern }: Recipe): Travels {
  return PATTERN_MODELS[pattern].directions > 1 ? moves.crossed : moves.oneWay
}

function measured(route: Travels, measure: Measure, stops?: Float32Array): Measured {
  return {
    shell: measure(route.wall) + measure(route.skin),
    bare: measure(route.back),
    infill: route.infill.map(({ spacingMm, hops, back }) => ({
      spacingMm,
      zigzags: hopCount(hops),
      hops: measure(hops),
      back: measure(back),
    })),
    over: stops?.some((count) => count > 0) ? stops : null,
  }
}

/**
 * A measure of all moves without plastic. Three directions are taken to need half as many again as
 * two. Between the head's straight way back to the walls, which it takes without infill, and its
 * way by every zigzag it does as many as there are lines: no more zigzags than lines, so that the
 * last of them goes as the infill does.
 */
function overRoute(census: Census, recipe: Recipe, { shell, bare, infill }: Measured): number {
  if (!(recipe.infillPct > 0)) return shell + bare
  const { directions } = PATTERN_MODELS[recipe.pattern]
  const times = directions > 1 ? directions / 2 : 1
  const spacing = infillSpacingMm(recipe)
  const filled = atSpacing(infill, spacing, ({ hops, back }) => times * hops + back)
  const zigzags = times * atSpacing(infill, spacing, (step) => step.zigzags)
  const lines = directions * lineCount(census.moves.room, spacing, recipe.lineMm)
  const done = zigzags > 0 ? Math.min(1, lines / zigzags) : 0
  return shell + bare + (filled - bare) * done
}
