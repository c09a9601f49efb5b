import { clockDoubt } from '../doubt/factors.ts'
import { doubtMore, rangeOfFigure } from '../doubt/figureDoubt.ts'
import type { Census } from '../model/census.ts'
import type { Material, Printer } from '../model/figures.ts'
import type { LaidRecipe } from '../model/settings.ts'
import { moreOf } from '../data/printerMore.ts'
import { ZERO_RANGE } from '../model/ranges.ts'
import { countDoubt, supportDoubt } from './countDoubt.ts'
import { meltSpeedMmS } from './flow.ts'
import type { Rooms } from './infill.ts'
import { PATTERN_MODELS, roomsOf } from './infill.ts'
import type { DrawnInfill, InfillSeconds } from './infillHours.ts'
import { drawnInfill, infillSeconds } from './infillHours.ts'
import type { Added, LayerSeconds, LayerWork } from './layerSeconds.ts'
import { layerSeconds, shortLayers, spreadOver, sumLayers } from './layerSeconds.ts'
import { gapLineMm, lineSeconds } from './lineHours.ts'
import { createMemory } from './remember.ts'
import { travelPath } from './travels.ts'
import type { TimeFigure } from './assemble.ts'

/**
 * Acceleration that a printer of unknown settings may have, × what is assumed, 19 times in 20
 * (common practice, no source).
 */
const LESS_ACCELERATION = 0.5

/**
 * Seconds for one piece printed by itself, start-up included: every move a ramp up, a cruise and a
 * ramp down, corners by the corner rule, lines slowed by the melt limit and on the first layer,
 * small layers slowed for the least layer time, but not below the printer's slowest speed.
 *
 * The move histograms hold all layers together. A layer's own time, needed for the first layer and
 * the least layer time, is its share of the time at speed, by length, and of the time lost in ramps
 * and turns, by the number of lines.
 */
export function printTime(
  census: Census,
  recipe: LaidRecipe,
  material: Material,
  printer: Printer,
): TimeFigure {
  const rooms = roomsOf(census, recipe).map(drawnRooms)
  const wholeS = wholeSeconds(census, recipe, rooms, material, printer)
  const slowerS = wholeSeconds(census, recipe, rooms, material, slowerPrinter(printer))
  const longer = wholeS > 0 ? slowerS / wholeS - 1 : 0
  const doubt = doubtMore(
    clockDoubt(printer, longer),
    countDoubt(census, recipe) + supportDoubt(census, recipe),
  )
  const travel = travelPath(rooms.map((one) => ({ ...one, at: one.infill.own.route })))
  if (wholeS <= 0) return { ...ZERO_RANGE, doubt, travel }
  const { low, mid, high } = rangeOfFigure(wholeS * (printer.clockFactor ?? 1), doubt)
  return { low, mid, high, doubt, travel }
}

/** One object for each printer, so that what is remembered of it is found again. */
const slower = new WeakMap<Printer, Printer>()

function slowerPrinter(printer: Printer): Printer {
  const known = slower.get(printer)
  if (known) return known
  const made = {
    ...printer,
    accelMmS2: printer.accelMmS2 * LESS_ACCELERATION,
    wallAccelMmS2: printer.wallAccelMmS2 * LESS_ACCELERATION,
    travelAccelMmS2: printer.travelAccelMmS2 * LESS_ACCELERATION,
  }
  slower.set(printer, made)
  return made
}

/** Rooms with their infill as it is laid. */
interface DrawnRooms extends Rooms {
  readonly infill: DrawnInfill
}

function drawnRooms({ census, recipe }: Rooms): DrawnRooms {
  return { census, recipe, infill: drawnInfill(census, recipe) }
}

/** Seconds by the printer's own data, before its clock was heard; 0 where nothing is laid. */
function wholeSeconds(
  census: Census,
  recipe: LaidRecipe,
  allRooms: readonly DrawnRooms[],
  material: Material,
  printer: Printer,
): number {
  if (census.layers.count === 0) return 0
  const layers = bareLayers(census, recipe, material, printer)
  return sumLayers(layers, infillOf(allRooms, material, printer, layers)) + printer.startS
}

/**
 * The hours of `printTime` layer by layer, for prints in which layers of several pieces lie beside
 * each other.
 */
export function layerWork(
  census: Census,
  recipe: LaidRecipe,
  material: Material,
  printer: Printer,
): LayerWork {
  if (census.layers.count === 0) return { ownS: new Float64Array(0), slowestS: new Float64Array(0) }
  // No layer is as long as that, so that all are kept one by one.
  const layers = bareLayers(census, recipe, material, printer, Infinity)
  const rooms = roomsOf(census, recipe).map(drawnRooms)
  return shortLayers(layers, infillOf(rooms, material, printer, layers))
}

/**
 * Two printers, the printer and a slower one, and the printer's layers one by one, of two recipes.
 */
const rememberBare = createMemory<BareLayers>(6)

/** The layers without infill and travels. */
interface BareLayers extends LayerSeconds {
  readonly floorMmS: number
}

function bareLayers(
  census: Census,
  recipe: LaidRecipe,
  material: Material,
  printer: Printer,
  leastLayerS = printer.leastLayerS,
): BareLayers {
  const { lineMm, layerMm } = recipe
  const key = [lineMm, layerMm, gapLineMm(recipe), material.flow, printer, leastLayerS]
  return rememberBare(census, key, () =>
    makeBareLayers(census, recipe, material, printer, leastLayerS),
  )
}

function makeBareLayers(
  census: Census,
  recipe: LaidRecipe,
  material: Material,
  printer: Printer,
  leastLayerS: number,
): BareLayers {
  const { count } = census.layers
  const { floorMmS } = moreOf(printer)
  const ownS = new Float64Array(count).fill(printer.layerChangeS)
  const slowestS = ownS.slice()
  for (const rooms of roomsOf(census, recipe)) {
    const { seconds, lengthMm } = lineSeconds(rooms.census, recipe, material, printer)
    for (let i = 0; i < count; i++) {
      ownS[i]! += seconds[i]!
      slowestS[i]! += lengthMm[i]! / floorMmS
    }
  }
  return { ...layerSeconds(ownS, slowestS, leastLayerS), floorMmS }
}

/** At a speed. */
interface InfillAt extends InfillSeconds {
  readonly speedMmS: number
}

/** Infill and the moves without plastic, as they are added to the layers. */
function infillOf(
  allRooms: readonly DrawnRooms[],
  material: Material,
  printer: Printer,
  layers: BareLayers,
): readonly Added[] {
  const added: Added[] = []
  for (const rooms of allRooms) addInfill(rooms, material, printer, layers, added)
  return added
}

/** Adds those of some rooms. Paths that wind lose time all along, straight ones at their ends. */
function addInfill(
  rooms: DrawnRooms,
  material: Material,
  printer: Printer,
  layers: BareLayers,
  added: Added[],
): void {
  const { census, recipe } = rooms
  const { heightMm } = census.layers
  const { roomMm, roomLines } = census.moves.byLayer
  const usual = infillAt(rooms, material, printer, printer.infillMmS, recipe.layerMm)
  const slow = Math.min(printer.infillMmS, printer.firstLayerMmS)
  const first = roomMm[0]! > 0 ? infillAt(rooms, material, printer, slow, heightMm[0]!) : usual
  const { floorMmS } = layers
  const winding = PATTERN_MODELS[recipe.pattern].pathFactor > 1
  added.push(
    {
      shares: spreadOver(layers, roomMm),
      ownS: usual.cruiseS,
      slowestS: (usual.cruiseS * usual.speedMmS) / floorMmS,
      firstOwnS: first.cruiseS,
      firstSlowestS: (first.cruiseS * first.speedMmS) / floorMmS,
    },
    {
      shares: spreadOver(layers, winding ? roomMm : roomLines),
      ownS: usual.turnS,
      slowestS: 0,
      firstOwnS: first.turnS,
      firstSlowestS: 0,
    },
  )
  for (const { seconds, over } of usual.travels) {
    added.push({
      shares: spreadOver(layers, over),
      ownS: seconds,
      slowestS: seconds,
      firstOwnS: seconds,
      firstSlowestS: seconds,
    })
  }
}

/** Infill and travels at a wanted speed, at a layer height. */
function infillAt(
  { census, recipe, infill }: DrawnRooms,
  material: Material,
  printer: Printer,
  wantedMmS: number,
  heightMm: number,
): InfillAt {
  const { flowMm3S, accelMmS2, cornerMmS } = printer
  const speedMmS = meltSpeedMmS(wantedMmS, flowMm3S, recipe.lineMm, heightMm, material.flow)
  const at = infillSeconds(census, infill, { speedMmS, accelMmS2, cornerMmS }, printer)
  return { cruiseS: at.cruiseS, turnS: at.turnS, travels: at.travels, speedMmS }
}
