import type { Census } from '../model/census.ts'
import type { Travels, TravelTable } from '../model/moves.ts'
import { RETRACT_BEYOND_MM } from '../model/moves.ts'
import type { TravelPath } from '../model/figures.ts'
import type { InfillRecipe, Rooms } from './infill.ts'
import { infillSpacingMm, PATTERN_MODELS, roomCount, windingZigzags } from './infill.ts'
import type { TravelMotion } from './motion.ts'
import { acrossOf, hopCount, travelTime } from './motion.ts'
import { createMemory } from './remember.ts'
import type { Between } from './spacings.ts'
import { betweenSpacings, valueBetween } from './spacings.ts'

/**
 * Seconds and the layers they are spread over: as each one's number of stops, all alike where there
 * are none.
 */
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
  /** To every zigzag of infill and then back, at each of the route's spacings. */
  readonly hops: readonly number[]
  readonly back: readonly number[]
}

/**
 * The moves without plastic of a pattern in a census, by a printer: those that do not draw the
 * filament back, and those that do.
 */
export interface TravelSeconds {
  readonly near: Measured
  readonly far: Measured
  /** How many of them there are on each layer; null where there are none. */
  readonly nearHops: Float32Array | null
  readonly farHops: Float32Array | null
}

export function travelSeconds(
  census: Census,
  { pattern }: Pick<InfillRecipe, 'pattern'>,
  motion: TravelMotion,
): TravelSeconds {
  const route = routeOf(census, pattern)
  return {
    near: measured(route, (table) => travelTime(table, false, motion)),
    far: measured(route, (table) => travelTime(table, true, motion)),
    nearHops: anyOf(route.nearHops),
    farHops: anyOf(route.farHops),
  }
}

/**
 * The same at a share of infill, those that draw the filament back apart from those that do not.
 */
export function travelSpreads(
  { near, far, nearHops, farHops }: TravelSeconds,
  at: RouteAt,
): readonly [Spread, Spread] {
  return [
    { seconds: overRoute(near, at), over: nearHops },
    { seconds: overRoute(far, at), over: farHops },
  ]
}

/** Path and retracts of a route. */
interface PathMeasured {
  readonly travelMm: Measured
  readonly retracts: Measured
}

/** Two routes. */
const rememberPath = createMemory<PathMeasured>(2)

/** Rooms with how far their infill goes the route. */
interface RoutedRooms extends Rooms {
  readonly at: RouteAt
}

/**
 * The way without plastic of one piece, and how often the filament is drawn back on it; to supports
 * and brim left out.
 */
export function travelPath(allRooms: readonly RoutedRooms[]): TravelPath {
  let travelMm = 0
  let retracts = 0
  for (const { census, recipe, at } of allRooms) {
    const route = routeOf(census, recipe.pattern)
    const path = rememberPath(census, [route], () => ({
      travelMm: measured(route, pathOf),
      retracts: measured(route, retractsOf),
    }))
    travelMm += overRoute(path.travelMm, at)
    retracts += overRoute(path.retracts, at)
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

function routeOf({ moves }: Census, pattern: InfillRecipe['pattern']): Travels {
  return PATTERN_MODELS[pattern].directions > 1 ? moves.crossed : moves.oneWay
}

function measured(route: Travels, measure: Measure): Measured {
  return {
    shell: measure(route.wall) + measure(route.skin),
    bare: measure(route.back),
    hops: route.infill.map(({ hops }) => measure(hops)),
    back: route.infill.map(({ back }) => measure(back)),
  }
}

function anyOf(hops: Float32Array): Float32Array | null {
  return hops.some((count) => count > 0) ? hops : null
}

/** What of a census' rooms decides how much of a route is gone. */
interface RouteRooms {
  readonly zigzags: readonly number[]
  /** See `acrossOf`. */
  readonly acrossMm: number
}

/** Two routes. */
const rememberRooms = createMemory<RouteRooms>(2)

/** How far a share of infill goes a route. */
export interface RouteAt {
  readonly between: Between
  /** Directions for one or two of the census'. */
  readonly times: number
  /** How much of the way by every zigzag is gone (0–1). */
  readonly done: number
}

const BARE: RouteAt = { between: { from: 0, to: 0, share: 0 }, times: 1, done: 0 }

/**
 * Where a share of infill stands on its route. Three directions are taken to need half as many
 * again as two. Between the head's straight way back to the walls, which it takes without infill,
 * and its way by every zigzag it does as many as there are lines: no more zigzags than lines, so
 * that the last of them goes as the infill does.
 */
export function routeAt(census: Census, recipe: InfillRecipe): RouteAt {
  if (!(recipe.infillPct > 0)) return BARE
  const { pattern, lineMm } = recipe
  const { directions } = PATTERN_MODELS[pattern]
  const times = directions > 1 ? directions / 2 : 1
  const route = routeOf(census, pattern)
  const spacing = infillSpacingMm(recipe)
  const rooms = rememberRooms(census, [route, lineMm], () => ({
    zigzags: route.infill.map(({ hops }) => hopCount(hops)),
    acrossMm: acrossOf(census.moves.room, lineMm),
  }))
  const between = betweenSpacings(route.infill, spacing)
  const straight = valueBetween(rooms.zigzags, between)
  const left = straight > 0 ? windingZigzags(recipe, straight, roomCount(census)) / straight : 1
  const zigzags = times * left * straight
  const lines = (directions * rooms.acrossMm) / spacing
  const done = zigzags > 0 ? Math.min(1, lines / zigzags) : 0
  return { between, times: times * left, done }
}

/** A measure of all moves without plastic. */
function overRoute(
  { shell, bare, hops, back }: Measured,
  { between, times, done }: RouteAt,
): number {
  const filled = times * valueBetween(hops, between) + valueBetween(back, between)
  return shell + bare + (filled - bare) * done
}
