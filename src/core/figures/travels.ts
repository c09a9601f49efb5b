import type { Census } from '../model/census.ts'
import type { Travels, TravelTable } from '../model/moves.ts'
import { RETRACT_BEYOND_MM } from '../model/moves.ts'
import type { Printer, TravelPath } from '../model/figures.ts'
import type { LaidRecipe, Recipe } from '../model/settings.ts'
import { infillSpacingMm, PATTERN_MODELS, roomsOf } from './infill.ts'
import type { TravelMotion } from './motion.ts'
import { atSpacing, hopCount, lineCount, travelTime } from './motion.ts'

/** Seconds and the layers they are spread over: as each one's number of stops, all alike where there are none. */
export interface Spread {
  readonly seconds: number
  readonly over: Float32Array | null
}

/** Seconds of the moves without plastic, those that draw the filament back apart from those that do not. */
export function travelSpreads(census: Census, recipe: Recipe, printer: Printer): Spread[] {
  const route = routeOf(census, recipe)
  const motion: TravelMotion = {
    speedMmS: printer.travelMmS,
    accelMmS2: printer.travelAccelMmS2,
    retractS: printer.retractS,
  }
  return [false, true].map((far) => {
    const stops = far ? route.farHops : route.nearHops
    return {
      seconds: overRoute(census, recipe, (table) => travelTime(table, far, motion)),
      over: stops.some((count) => count > 0) ? stops : null,
    }
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
    travelMm += overRoute(rooms.census, rooms.recipe, pathOf)
    retracts += overRoute(rooms.census, rooms.recipe, retractsOf)
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

/**
 * A measure of all moves without plastic. Three directions are taken to need half as many again as
 * two. Between the head's straight way back to the walls, which it takes without infill, and its
 * way by every zigzag it does as many as there are lines: no more zigzags than lines, so that the
 * last of them goes as the infill does.
 */
function overRoute(
  census: Census,
  recipe: Recipe,
  measure: (table: TravelTable) => number,
): number {
  const route = routeOf(census, recipe)
  const shell = measure(route.wall) + measure(route.skin)
  const bare = measure(route.back)
  if (!(recipe.infillPct > 0)) return shell + bare
  const { directions } = PATTERN_MODELS[recipe.pattern]
  const times = directions > 1 ? directions / 2 : 1
  const spacing = infillSpacingMm(recipe)
  const filled = atSpacing(
    route.infill,
    spacing,
    ({ hops, back }) => times * measure(hops) + measure(back),
  )
  const zigzags = atSpacing(route.infill, spacing, ({ hops }) => times * hopCount(hops))
  const lines = directions * lineCount(census.moves.room, spacing, recipe.lineMm)
  const done = zigzags > 0 ? Math.min(1, lines / zigzags) : 0
  return shell + bare + (filled - bare) * done
}
