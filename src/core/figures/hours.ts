import type { Census } from '../census.ts'
import type { Material, Printer, Range } from '../figures.ts'
import type { Recipe } from '../settings.ts'
import { SUPPORT_SHARE } from './deposit.ts'
import { meltSpeedMmS } from './flow.ts'
import { infillLayer, infillSpacingMm } from './infill.ts'
import { moveTime } from './kinematics.ts'
import { rangeAbout } from './spread.ts'

/**
 * Published build-time models that know the path and the machine's acceleration come within 8.5 % (G. Medina-Sanchez et
 * al., Materials 2019, 12(23), 3982, doi 10.3390/ma12233982). Knowing only the layers, claim no better than 15 %, and 25 %
 * where half the time or more goes into speeding up and slowing down.
 */
const SPREAD_SMOOTH = 0.15
const SPREAD_CHOPPY = 0.25
/** A closed outline is taken as this many straight runs, its corners taken at corner speed. */
const RUNS_PER_LOOP = 4
/** Drawing the filament back before a travel and pushing it forward after (common practice, no source). */
const RETRACT_S = 0.3

/** Lines of one kind: together `lengthMm` long, in `count` straight runs. */
interface Runs {
  readonly lengthMm: number
  readonly count: number
  readonly speedMmS: number
}

/** Seconds of printing, and what they would be if the head needed no time to change its speed. */
interface Clock {
  readonly realS: number
  readonly idealS: number
}

/**
 * Seconds for one piece printed by itself, start-up included: path length of every kind of line at its speed, slowed by the
 * melt limit and on the first layer, with the time runs lose to acceleration, travels and layer changes.
 *
 * The census knows lengths and counts per layer, not each move: a kind's runs on a layer are taken as equally long. Least
 * layer time is not modelled.
 */
export function printTime(
  census: Census,
  recipe: Recipe,
  material: Material,
  printer: Printer,
): Range {
  let realS = 0
  let idealS = 0
  for (let i = 0; i < census.layers.count; i++) {
    const clock = layerTime(census, recipe, material, printer, i)
    realS += clock.realS
    idealS += clock.idealS
  }
  const fixedS = census.layers.count > 0 ? printer.startS : 0
  const layerChangesS = census.layers.count * printer.layerChangeS
  const choppy = realS > 0 ? Math.min(1, 2 * (1 - idealS / realS)) : 0
  const share = SPREAD_SMOOTH + (SPREAD_CHOPPY - SPREAD_SMOOTH) * choppy
  return rangeAbout(realS + layerChangesS + fixedS, {
    low: Math.min(1, share + census.doubtfulShare),
    high: share + census.doubtfulShare,
  })
}

function layerTime(
  census: Census,
  recipe: Recipe,
  material: Material,
  printer: Printer,
  i: number,
): Clock {
  const heightMm = census.layers.heightMm[i] ?? 0
  const speed = (wanted: number): number => {
    const slowed = i === 0 ? Math.min(wanted, printer.firstLayerMmS) : wanted
    return meltSpeedMmS(slowed, printer.flowMm3S, recipe.lineMm, heightMm, material.flow)
  }
  let realS = 0
  let idealS = 0
  for (const runs of layerRuns(census, recipe, printer, i)) {
    if (runs.lengthMm <= 0) continue
    const v = speed(runs.speedMmS)
    const count = Math.max(1, runs.count)
    realS += count * moveTime(runs.lengthMm / count, v, printer.accelMmS2, printer.cornerMmS)
    idealS += runs.lengthMm / v
  }
  return { realS: realS + travelTime(census, printer, i), idealS }
}

/** The lines laid on layer `i`, by kind. */
function layerRuns(census: Census, recipe: Recipe, printer: Printer, i: number): readonly Runs[] {
  const { layers } = census
  const at = (values: Float64Array | Uint32Array): number => values[i] ?? 0
  const lengthOf = (mm2: number): number => mm2 / recipe.lineMm
  const skinMm2 = at(layers.skinMm2)
  // Skin lines run across their region: as long as a square of the same area is wide.
  const skinRunMm = Math.sqrt(skinMm2 / Math.max(1, at(layers.islands)))
  const supportMm = lengthOf(at(layers.supportMm2) * SUPPORT_SHARE)
  return [
    {
      lengthMm: lengthOf(at(layers.wallMm2)),
      count: at(layers.contours) * Math.max(1, recipe.walls) * RUNS_PER_LOOP,
      speedMmS: printer.wallMmS,
    },
    {
      lengthMm: lengthOf(skinMm2),
      count: skinRunMm > 0 ? lengthOf(skinMm2) / skinRunMm : 0,
      speedMmS: printer.skinMmS,
    },
    infillRuns(census, recipe, printer, i),
    {
      lengthMm: supportMm,
      count: supportMm / Math.max(1, Math.sqrt(at(layers.supportMm2))),
      speedMmS: printer.infillMmS,
    },
    // The brim is laid with the first layer; its length is what its volume leaves.
    {
      lengthMm:
        i === 0 ? census.brimMm3 / (recipe.lineMm * Math.max(1e-9, at(layers.heightMm))) : 0,
      count: RUNS_PER_LOOP,
      speedMmS: printer.wallMmS,
    },
  ]
}

/** Each infill line is one run and each turn another; the sides of honeycomb cells are runs of their own. */
function infillRuns(census: Census, recipe: Recipe, printer: Printer, i: number): Runs {
  const { pathMm, lines } = infillLayer(census, recipe, i)
  if (pathMm <= 0) return { lengthMm: 0, count: 0, speedMmS: printer.infillMmS }
  // Two paths share a row of cells √3·side wide, so a side is 2/√3 of the distance between paths.
  const sides =
    recipe.pattern === 'honeycomb' ? pathMm / ((2 / Math.sqrt(3)) * infillSpacingMm(recipe)) : 0
  return { lengthMm: pathMm, count: Math.max(2 * lines, sides), speedMmS: printer.infillMmS }
}

/** Travels of layer `i`: one to each outline and each infill room, half the layer's width long. */
function travelTime(census: Census, printer: Printer, i: number): number {
  const { layers } = census
  const moves = (layers.contours[i] ?? 0) + (layers.rooms[i] ?? 0)
  const lengthMm = Math.sqrt(layers.areaMm2[i] ?? 0) / 2
  return moves * (moveTime(lengthMm, printer.travelMmS, printer.accelMmS2) + RETRACT_S)
}
