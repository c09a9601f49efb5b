import { clockDoubt } from '../doubt/factors.ts'
import { doubtMore, rangeOfFigure } from '../doubt/figureDoubt.ts'
import type { Census } from '../model/census.ts'
import type { Material, Printer } from '../model/figures.ts'
import type { LaidRecipe, Recipe } from '../model/settings.ts'
import { moreOf } from '../data/printerMore.ts'
import { ZERO_RANGE } from '../model/ranges.ts'
import { countDoubt, supportDoubt } from './countDoubt.ts'
import { meltSpeedMmS } from './flow.ts'
import { PATTERN_MODELS, roomsOf } from './infill.ts'
import type { InfillSeconds } from './infillHours.ts'
import { infillSeconds } from './infillHours.ts'
import { lineSeconds } from './lineHours.ts'
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
  const wholeS = wholeSeconds(census, recipe, material, printer)
  const slowerS = wholeSeconds(census, recipe, material, slowerPrinter(printer))
  const longer = wholeS > 0 ? slowerS / wholeS - 1 : 0
  const doubt = doubtMore(
    clockDoubt(printer, longer),
    countDoubt(census, recipe) + supportDoubt(census, recipe),
  )
  const travel = travelPath(census, recipe)
  if (wholeS <= 0) return { ...ZERO_RANGE, doubt, travel }
  return { ...rangeOfFigure(wholeS * (printer.clockFactor ?? 1), doubt), doubt, travel }
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

/** Seconds by the printer's own data, before its clock was heard; 0 where nothing is laid. */
function wholeSeconds(
  census: Census,
  recipe: LaidRecipe,
  material: Material,
  printer: Printer,
): number {
  const { layers } = census
  if (layers.count === 0) return 0
  const laid = {
    laidS: new Float64Array(layers.count),
    laidMm: new Float64Array(layers.count),
    restS: new Float64Array(layers.count).fill(printer.layerChangeS),
  }
  for (const rooms of roomsOf(census, recipe)) {
    const { seconds, lengthMm } = lineSeconds(rooms.census, rooms.recipe, material, printer)
    for (let i = 0; i < layers.count; i++) {
      laid.laidS[i]! += seconds[i]!
      laid.laidMm[i]! += lengthMm[i]!
    }
    addInfill(rooms.census, rooms.recipe, material, printer, laid)
  }
  const { floorMmS } = moreOf(printer)
  let timeS = 0
  for (let i = 0; i < layers.count; i++) {
    const ownS = laid.laidS[i]! + laid.restS[i]!
    const slowestS = laid.laidMm[i]! / floorMmS + laid.restS[i]!
    timeS += Math.max(ownS, Math.min(printer.leastLayerS, slowestS))
  }
  return timeS + printer.startS
}

/** What is done on each layer. */
interface LayerWork {
  /** Seconds that lines take at their own speeds, and how long they are. */
  readonly laidS: Float64Array
  readonly laidMm: Float64Array
  /** Seconds of everything else. */
  readonly restS: Float64Array
}

/** At a speed. */
interface InfillAt extends InfillSeconds {
  readonly speedMmS: number
}

/** Adds infill and the moves without plastic. Paths that wind lose time all along, straight ones at their ends. */
function addInfill(
  census: Census,
  recipe: Recipe,
  material: Material,
  printer: Printer,
  { laidS, laidMm, restS }: LayerWork,
): void {
  const { layers, moves } = census
  const { roomMm, roomLines } = moves.byLayer
  const secondsAt = (wanted: number, heightMm: number): InfillAt => {
    const { flowMm3S, accelMmS2, cornerMmS } = printer
    const speedMmS = meltSpeedMmS(wanted, flowMm3S, recipe.lineMm, heightMm, material.flow)
    const motion = { speedMmS, accelMmS2, cornerMmS }
    return { ...infillSeconds(census, recipe, motion, printer), speedMmS }
  }
  const usual = secondsAt(printer.infillMmS, recipe.layerMm)
  const slow = Math.min(printer.infillMmS, printer.firstLayerMmS)
  const first = roomMm[0]! > 0 ? secondsAt(slow, layers.heightMm[0]!) : usual
  const winding = PATTERN_MODELS[recipe.pattern].pathFactor > 1
  const losing = winding ? roomMm : roomLines
  const [length, number] = [sum(roomMm), sum(losing)]
  for (let i = 0; i < layers.count; i++) {
    const { cruiseS, turnS, speedMmS } = i === 0 ? first : usual
    const alongS = length > 0 ? (cruiseS * roomMm[i]!) / length : 0
    laidS[i]! += alongS
    laidMm[i]! += alongS * speedMmS
    if (number > 0) laidS[i]! += (turnS * losing[i]!) / number
  }
  for (const { seconds, over } of usual.travels) {
    const stops = over ? sum(over) : layers.count
    for (let i = 0; i < layers.count; i++) restS[i]! += (seconds * (over?.[i] ?? 1)) / stops
  }
}

function sum(values: ArrayLike<number>): number {
  let total = 0
  for (let i = 0; i < values.length; i++) total += values[i]!
  return total
}
