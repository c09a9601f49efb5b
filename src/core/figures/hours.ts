import { clockDoubt } from '../doubt/factors.ts'
import { doubtMore, rangeOfFigure } from '../doubt/figureDoubt.ts'
import type { Census } from '../model/census.ts'
import type { Material, Printer } from '../model/figures.ts'
import type { LaidRecipe, Recipe } from '../model/settings.ts'
import { ZERO_RANGE } from '../model/ranges.ts'
import { SUPPORT_SHARE } from './deposit.ts'
import { countDoubt, supportDoubt } from './countDoubt.ts'
import { meltSpeedMmS } from './flow.ts'
import { PATTERN_MODELS, roomsOf } from './infill.ts'
import type { InfillSeconds } from './infillHours.ts'
import { infillSeconds } from './infillHours.ts'
import { moveTime } from './kinematics.ts'
import type { Motion } from './motion.ts'
import { hopCount, lapTime, zigzagTime } from './motion.ts'
import { travelPath } from './travels.ts'
import type { TimeFigure } from './assemble.ts'

/**
 * Acceleration that a printer of unknown settings may have, × what is assumed, 19 times in 20
 * (common practice, no source).
 */
const LESS_ACCELERATION = 0.5

/** One kind of line: how it spreads over the layers, and how long all of it takes at a wanted speed. */
interface Kind {
  /** On each layer, in any measure of length and of number. */
  readonly length: ArrayLike<number>
  readonly number: ArrayLike<number>
  readonly wantedMmS: number
  readonly accelMmS2: number
  readonly timeAt: (motion: Motion) => number
}

/**
 * Seconds for one piece printed by itself, start-up included: every move a ramp up, a cruise and a
 * ramp down, corners by the corner rule, lines slowed by the melt limit and on the first layer,
 * small layers stretched to the least layer time.
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
  const wholeS = laidS(census, recipe, material, printer)
  const slowerS = laidS(census, recipe, material, {
    ...printer,
    accelMmS2: printer.accelMmS2 * LESS_ACCELERATION,
    wallAccelMmS2: printer.wallAccelMmS2 * LESS_ACCELERATION,
    travelAccelMmS2: printer.travelAccelMmS2 * LESS_ACCELERATION,
  })
  const longer = wholeS > 0 ? slowerS / wholeS - 1 : 0
  const doubt = doubtMore(
    clockDoubt(printer, longer),
    countDoubt(census, recipe) + supportDoubt(census, recipe),
  )
  const travel = travelPath(census, recipe)
  if (wholeS <= 0) return { ...ZERO_RANGE, doubt, travel }
  return { ...rangeOfFigure(wholeS * (printer.clockFactor ?? 1), doubt), doubt, travel }
}

/** Seconds by the printer's own data, before its clock was heard; 0 where nothing is laid. */
function laidS(census: Census, recipe: LaidRecipe, material: Material, printer: Printer): number {
  const { layers } = census
  if (layers.count === 0) return 0
  const layerS = new Float64Array(layers.count).fill(printer.layerChangeS)
  for (const rooms of roomsOf(census, recipe)) {
    addLines(rooms.census, rooms.recipe, material, printer, layerS)
    addInfill(rooms.census, rooms.recipe, material, printer, layerS)
  }
  let timeS = 0
  for (const s of layerS) timeS += Math.max(s, printer.leastLayerS)
  return timeS + printer.startS
}

/** Adds the lines of every kind but infill. */
function addLines(
  census: Census,
  recipe: Recipe,
  material: Material,
  printer: Printer,
  layerS: Float64Array,
): void {
  const { layers } = census
  for (const kind of kindsOf(census, recipe, printer)) {
    const length = sum(kind.length)
    const number = sum(kind.number)
    if (length <= 0 || number <= 0) continue
    const timesAt = (wanted: number, heightMm: number): { cruiseS: number; turnS: number } => {
      const { flowMm3S } = printer
      const speedMmS = meltSpeedMmS(wanted, flowMm3S, recipe.lineMm, heightMm, material.flow)
      const motion = { speedMmS, accelMmS2: kind.accelMmS2, cornerMmS: printer.cornerMmS }
      const cruiseS = kind.timeAt({ ...motion, accelMmS2: Infinity })
      return { cruiseS: cruiseS / length, turnS: (kind.timeAt(motion) - cruiseS) / number }
    }
    const slow = Math.min(kind.wantedMmS, printer.firstLayerMmS)
    const onFirst = kind.length[0]! > 0 || kind.number[0]! > 0
    const usual = timesAt(kind.wantedMmS, recipe.layerMm)
    const first = onFirst ? timesAt(slow, layers.heightMm[0]!) : usual
    for (let i = 0; i < layers.count; i++) {
      const { cruiseS, turnS } = i === 0 ? first : usual
      layerS[i]! += cruiseS * kind.length[i]! + turnS * kind.number[i]!
    }
  }
}

/** Adds infill and the moves without plastic. Paths that wind lose time all along, straight ones at their ends. */
function addInfill(
  census: Census,
  recipe: Recipe,
  material: Material,
  printer: Printer,
  layerS: Float64Array,
): void {
  const { layers, moves } = census
  const { roomMm, roomLines } = moves.byLayer
  const secondsAt = (wanted: number, heightMm: number): InfillSeconds => {
    const { flowMm3S, accelMmS2, cornerMmS } = printer
    const speedMmS = meltSpeedMmS(wanted, flowMm3S, recipe.lineMm, heightMm, material.flow)
    return infillSeconds(census, recipe, { speedMmS, accelMmS2, cornerMmS }, printer)
  }
  const usual = secondsAt(printer.infillMmS, recipe.layerMm)
  const slow = Math.min(printer.infillMmS, printer.firstLayerMmS)
  const first = roomMm[0]! > 0 ? secondsAt(slow, layers.heightMm[0]!) : usual
  const winding = PATTERN_MODELS[recipe.pattern].pathFactor > 1
  const losing = winding ? roomMm : roomLines
  const [length, number] = [sum(roomMm), sum(losing)]
  for (let i = 0; i < layers.count; i++) {
    const { cruiseS, turnS } = i === 0 ? first : usual
    if (length > 0) layerS[i]! += (cruiseS * roomMm[i]!) / length
    if (number > 0) layerS[i]! += (turnS * losing[i]!) / number
  }
  for (const { seconds, over } of usual.travels) {
    const stops = over ? sum(over) : layers.count
    for (let i = 0; i < layers.count; i++) layerS[i]! += (seconds * (over?.[i] ?? 1)) / stops
  }
}

function kindsOf(census: Census, recipe: Recipe, printer: Printer): readonly Kind[] {
  const { layers, moves } = census
  const { lineMm } = recipe
  const wallMm = sum(layers.wallMm2) / lineMm
  const brimMm2 = new Float64Array(layers.count)
  brimMm2[0] = census.brimMm3 / layers.heightMm[0]!
  const supportMm = (sum(layers.supportMm2) * SUPPORT_SHARE) / lineMm
  const supportRunMm = Math.sqrt(most(layers.supportMm2))
  const lines = { accelMmS2: printer.accelMmS2 }
  return [
    {
      length: layers.wallMm2,
      number: layers.contours,
      wantedMmS: printer.wallMmS,
      accelMmS2: printer.wallAccelMmS2,
      // Inner wall lines turn the same corners on shorter runs, so one scale fits them all.
      timeAt: (motion) =>
        moves.wallLapMm > 0
          ? lapTime(moves.wall, wallMm / moves.wallLapMm, motion)
          : wallMm / motion.speedMmS,
    },
    {
      ...lines,
      length: moves.byLayer.skinMm,
      number: moves.byLayer.skinLines,
      wantedMmS: printer.skinMmS,
      timeAt: (motion) =>
        zigzagTime(
          moves.skin,
          hopCount(moves.oneWay.skin),
          lineMm,
          lineMm * moves.skin.slant,
          lineMm,
          motion,
        ),
    },
    {
      ...lines,
      length: layers.supportMm2,
      number: layers.supportMm2,
      wantedMmS: printer.infillMmS,
      timeAt: (motion) => evenRuns(supportMm, supportRunMm, motion),
    },
    {
      accelMmS2: printer.wallAccelMmS2,
      length: brimMm2,
      number: brimMm2,
      wantedMmS: printer.wallMmS,
      timeAt: (motion) => evenRuns(brimMm2[0]! / lineMm, Math.sqrt(layers.areaMm2[0]!), motion),
    },
  ]
}

/** Lines of which only the length and a typical run are known. */
function evenRuns(lengthMm: number, runMm: number, motion: Motion): number {
  if (lengthMm <= 0 || runMm <= 0) return 0
  const corner = Math.min(motion.cornerMmS, motion.speedMmS)
  return (lengthMm / runMm) * moveTime(runMm, motion.speedMmS, motion.accelMmS2, corner)
}

function most(values: ArrayLike<number>): number {
  let largest = 0
  for (let i = 0; i < values.length; i++) largest = Math.max(largest, values[i]!)
  return largest
}

function sum(values: ArrayLike<number>): number {
  let total = 0
  for (let i = 0; i < values.length; i++) total += values[i]!
  return total
}
