import type { Census } from '../model/census.ts'
import type { Printer } from '../model/figures.ts'
import type { InfillRecipe } from './infill.ts'
import {
  infillLaid,
  infillSpacingMm,
  joinedShareOf,
  PATTERN_MODELS,
  zigzagCount,
} from './infill.ts'
import type { DrawnLines } from './infillTime.ts'
import { infillTime, straightLines } from './infillTime.ts'
import type { LaidSeconds, LineSums, Motion } from './motion.ts'
import { createMemory } from './remember.ts'
import type { RouteAt, Spread, TravelSeconds } from './travels.ts'
import { routeAt, travelSeconds, travelSpreads } from './travels.ts'

/**
 * Seconds of infill and of every move without plastic, which hang together: neither can be told
 * without the other.
 */
export interface InfillSeconds extends LaidSeconds {
  readonly travels: readonly Spread[]
}

/**
 * From this share on a pattern goes over into solid lines, evenly, until it is them at 100 %: that
 * dense no printer draws its waves and cells any more (common practice, no source). Nor does it
 * ever take longer than solid lines do.
 */
const DENSE_FROM = 50

/** A share of infill in a census, drawn in its pattern, with the way to its lines. */
interface Drawing extends DrawnLines {
  readonly route: RouteAt
}

function drawingOf(census: Census, recipe: InfillRecipe): Drawing {
  const spacingMm = infillSpacingMm(recipe)
  return {
    recipe,
    spacingMm,
    laid: infillLaid(census, recipe),
    zigzags: zigzagCount(census, recipe, spacingMm),
    route: routeAt(census, recipe),
  }
}

/**
 * A share of infill as it is laid, whatever the printer: in its pattern and, from `DENSE_FROM` on,
 * in solid lines.
 */
export interface DrawnInfill {
  readonly own: Drawing
  readonly lines: Drawing | null
  /** How far it has gone over into them (0–1). */
  readonly solid: number
}

export function drawnInfill(
  census: Census,
  { pattern, infillPct, lineMm, habits }: InfillRecipe,
): DrawnInfill {
  const recipe = { pattern, infillPct, lineMm, ...(habits === undefined ? {} : { habits }) }
  const solid = Math.max(0, (infillPct - DENSE_FROM) / (100 - DENSE_FROM))
  const own = drawingOf(census, recipe)
  if (solid === 0 || pattern === 'lines') return { own, lines: null, solid }
  return { own, lines: drawingOf(census, { ...recipe, pattern: 'lines' }), solid }
}

/**
 * Seconds of a recipe's infill. Between the spacings at which travels are known a sparser infill
 * may come out as taking longer by a hair, for its zigzags happen to end less well; then its time
 * holds for the denser one as well, so that hours never fall when infill is added.
 */
export function infillSeconds(
  census: Census,
  infill: DrawnInfill,
  motion: Motion,
  printer: Printer,
): InfillSeconds {
  const { recipe, spacingMm: spacing } = infill.own
  const fixed = fixedOf(census, recipe, motion, printer)
  if (!(recipe.infillPct > 0)) return drive(fixed.own, infill.own)
  const here = capped(fixed, infill)
  const sparser = fixed.steps.find(({ spacingMm }) => spacingMm > spacing)
  const leastS = sparser?.leastS ?? fixed.bareS
  const sum = sumOf(here)
  return sum > 0 && sum < leastS ? scale(here, leastS / sum) : here
}

/** A pattern in a census as a printer drives it, whatever its share. */
interface Way {
  readonly census: Census
  readonly motion: Motion
  readonly straight: LineSums | null
  readonly travels: TravelSeconds
}

/** A pattern, and the solid lines that it goes over into. */
interface Ways {
  readonly own: Way
  readonly lines: Way
  readonly solidS: number
}

/** What does not depend on how much infill is asked for. */
interface Fixed extends Ways {
  /** Without infill. */
  readonly bareS: number
  /**
   * The spacings at which travels are known, the narrowest first, and the most seconds at any as
   * wide.
   */
  readonly steps: readonly { readonly spacingMm: number; readonly leastS: number }[]
}

/** Two speeds, the printer and a slower one, of two recipes. */
const remember = createMemory<Fixed>(8)

function fixedOf(census: Census, recipe: InfillRecipe, motion: Motion, printer: Printer): Fixed {
  const { pattern, lineMm } = recipe
  const { speedMmS, accelMmS2, cornerMmS } = motion
  const { travelMmS, travelAccelMmS2, retractS } = printer
  const laid = [pattern, lineMm, joinedShareOf(recipe), speedMmS, accelMmS2, cornerMmS]
  return remember(census, [...laid, travelMmS, travelAccelMmS2, retractS], () =>
    makeFixed(census, recipe, motion, printer),
  )
}

function makeFixed(census: Census, recipe: InfillRecipe, motion: Motion, printer: Printer): Fixed {
  const { pattern, lineMm } = recipe
  const solid = { ...recipe, pattern: 'lines', infillPct: 100 } as const
  const own = wayOf(census, recipe, motion, printer)
  const lines = wayOf(census, solid, motion, printer)
  const ways = { own, lines, solidS: sumOf(drive(lines, drawingOf(census, solid))) }
  const bareS = sumOf(drive(own, drawingOf(census, { ...recipe, infillPct: 0 })))
  const { directions, pathFactor } = PATTERN_MODELS[pattern]
  let leastS = bareS
  const steps = census.moves.oneWay.infill
    .toReversed()
    .map(({ spacingMm }) => {
      const infillPct = (100 * directions * pathFactor * lineMm) / spacingMm
      const sumS = sumOf(capped(ways, drawnInfill(census, { ...recipe, infillPct })))
      leastS = Math.max(leastS, sumS)
      return { spacingMm, leastS }
    })
    .toReversed()
  return { ...ways, bareS, steps }
}

function wayOf(census: Census, recipe: InfillRecipe, motion: Motion, printer: Printer): Way {
  const { travelMmS: speedMmS, travelAccelMmS2: accelMmS2, retractS } = printer
  return {
    census,
    motion,
    straight: straightLines(census, recipe, motion),
    travels: travelSeconds(census, recipe, { speedMmS, accelMmS2, retractS }),
  }
}

/** Going over into solid lines, and never longer than they. */
function capped({ own, lines, solidS }: Ways, infill: DrawnInfill): InfillSeconds {
  const pattern = drive(own, infill.own)
  const mixed =
    infill.lines === null ? pattern : mix(pattern, drive(lines, infill.lines), infill.solid)
  const sum = sumOf(mixed)
  return sum > solidS ? scale(mixed, solidS / sum) : mixed
}

function drive({ census, motion, straight, travels }: Way, drawing: Drawing): InfillSeconds {
  const { cruiseS, turnS } = infillTime(census, drawing, straight, motion)
  return { cruiseS, turnS, travels: travelSpreads(travels, drawing.route) }
}

function sumOf({ cruiseS, turnS, travels }: InfillSeconds): number {
  let sum = cruiseS + turnS
  for (const { seconds } of travels) sum += seconds
  return sum
}

function scale({ cruiseS, turnS, travels }: InfillSeconds, times: number): InfillSeconds {
  return {
    cruiseS: cruiseS * times,
    turnS: turnS * times,
    travels: travels.map(({ seconds, over }) => ({ seconds: seconds * times, over })),
  }
}

function mix(a: InfillSeconds, b: InfillSeconds, share: number): InfillSeconds {
  const [most, rest] = [scale(a, 1 - share), scale(b, share)]
  return {
    cruiseS: most.cruiseS + rest.cruiseS,
    turnS: most.turnS + rest.turnS,
    travels: [...most.travels, ...rest.travels],
  }
}
