import type { Census } from '../census.ts'
import type { Material, Printer, Range } from '../figures.ts'
import type { Recipe } from '../settings.ts'
import { SUPPORT_SHARE } from './deposit.ts'
import { meltSpeedMmS } from './flow.ts'
import { infillSpacingMm, PATTERN_MODELS } from './infill.ts'
import { infillTime } from './infillTime.ts'
import { moveTime } from './kinematics.ts'
import type { Motion } from './motion.ts'
import { lapTime, travelTime, zigzagTime, zigzagTravelTime } from './motion.ts'
import { rangeAbout } from './spread.ts'

/**
 * What is claimed before and after the user's clock was heard. Published build-time models with fitted motion come within
 * 8.5 % (G. Medina-Sanchez et al., Materials 2019, 12(23), 3982, doi 10.3390/ma12233982); one that knows the machine only by
 * its class should not claim better than 15 %.
 */
export const SPREAD_UNTIMED = 0.15
export const SPREAD_TIMED = 0.085

/** One kind of line: where its length lies, and how long all of it takes at a wanted speed. */
interface Kind {
  /** mm² (or any measure of length) on each layer. */
  readonly perLayer: Float64Array
  readonly wantedMmS: number
  readonly accelMmS2: number
  readonly timeAt: (motion: Motion) => number
}

/**
 * Seconds for one piece printed by itself, start-up included: every move a ramp up, a cruise and a ramp down, corners by the
 * corner rule, lines slowed by the melt limit and on the first layer, small layers stretched to the least layer time.
 *
 * The move histograms hold all layers together. A layer's own time, needed for the first layer and the least layer time,
 * is taken as its share of each kind's length.
 */
export function printTime(
  census: Census,
  recipe: Recipe,
  material: Material,
  printer: Printer,
): Range {
  const { layers } = census
  if (layers.count === 0) return { low: 0, mid: 0, high: 0 }
  const layerS = new Float64Array(layers.count).fill(printer.layerChangeS)
  for (const kind of kindsOf(census, recipe, printer)) {
    const total = kind.perLayer.reduce((sum, value) => sum + value, 0)
    if (total <= 0) continue
    const timeAt = (wanted: number, heightMm: number): number =>
      kind.timeAt({
        speedMmS: meltSpeedMmS(wanted, printer.flowMm3S, recipe.lineMm, heightMm, material.flow),
        accelMmS2: kind.accelMmS2,
        cornerMmS: printer.cornerMmS,
      })
    const usual = timeAt(kind.wantedMmS, recipe.layerMm) / total
    const first = Math.min(kind.wantedMmS, printer.firstLayerMmS)
    layerS[0]! += (timeAt(first, layers.heightMm[0]!) / total) * kind.perLayer[0]!
    for (let i = 1; i < layers.count; i++) layerS[i]! += usual * kind.perLayer[i]!
  }
  spreadTravel(census, travelsTime(census, recipe, printer), layerS)
  let timeS = 0
  for (const s of layerS) timeS += Math.max(s, printer.leastLayerS)
  const factor = printer.clockFactor ?? 1
  const spread =
    (printer.clockFactor === null ? SPREAD_UNTIMED : SPREAD_TIMED) + census.doubtfulShare
  return rangeAbout((timeS + printer.startS) * factor, {
    low: Math.min(1, spread),
    high: spread,
  })
}

/** Seconds for all moves without plastic: to every wall line, every skin zigzag and, in each direction, every infill zigzag. */
function travelsTime({ moves }: Census, recipe: Recipe, printer: Printer): number {
  const motion = {
    speedMmS: printer.travelMmS,
    accelMmS2: printer.travelAccelMmS2,
    retractS: printer.retractS,
  }
  const { directions } = PATTERN_MODELS[recipe.pattern]
  const infillS =
    recipe.infillPct > 0
      ? directions * zigzagTravelTime(moves.room, infillSpacingMm(recipe), motion)
      : 0
  return (
    travelTime(moves.travel, motion) +
    zigzagTravelTime(moves.skin, recipe.lineMm, motion) +
    infillS
  )
}

function kindsOf(census: Census, recipe: Recipe, printer: Printer): readonly Kind[] {
  const { layers, moves } = census
  const { lineMm, walls } = recipe
  const lapsMm = walls * moves.wallLapMm
  const wallMm = sum(layers.wallMm2) / lineMm
  const brimMm2 = new Float64Array(layers.count)
  brimMm2[0] = census.brimMm3 / layers.heightMm[0]!
  const supportMm = (sum(layers.supportMm2) * SUPPORT_SHARE) / lineMm
  const supportRunMm = Math.sqrt(Math.max(...layers.supportMm2))
  const lines = { accelMmS2: printer.accelMmS2 }
  return [
    {
      perLayer: layers.wallMm2,
      wantedMmS: printer.wallMmS,
      accelMmS2: printer.wallAccelMmS2,
      // Inner wall lines turn the same corners on shorter runs, so one scale fits them all.
      timeAt: (motion) =>
        lapsMm > 0
          ? walls * lapTime(moves.wall, wallMm / lapsMm, motion)
          : wallMm / motion.speedMmS,
    },
    {
      ...lines,
      perLayer: layers.skinMm2,
      wantedMmS: printer.skinMmS,
      timeAt: (motion) => zigzagTime(moves.skin, lineMm, lineMm * moves.skin.slant, lineMm, motion),
    },
    {
      ...lines,
      perLayer: layers.roomMm2,
      wantedMmS: printer.infillMmS,
      timeAt: (motion) => infillTime(census, recipe, motion),
    },
    {
      ...lines,
      perLayer: layers.supportMm2,
      wantedMmS: printer.infillMmS,
      timeAt: (motion) => evenRuns(supportMm, supportRunMm, motion),
    },
    {
      accelMmS2: printer.wallAccelMmS2,
      perLayer: brimMm2,
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

/** Shares the travel out by what there is to travel to. */
function spreadTravel(census: Census, timeS: number, layerS: Float64Array): void {
  const { layers } = census
  let stops = 0
  for (let i = 0; i < layers.count; i++) stops += layers.contours[i]! + layers.rooms[i]! + 1
  for (let i = 0; i < layers.count; i++) {
    layerS[i]! += (timeS * (layers.contours[i]! + layers.rooms[i]! + 1)) / stops
  }
}

const sum = (values: Float64Array): number => values.reduce((a, b) => a + b, 0)
