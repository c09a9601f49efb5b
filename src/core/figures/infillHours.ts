import type { Census } from '../model/census.ts'
import type { Printer } from '../model/figures.ts'
import type { Recipe } from '../model/settings.ts'
import type { InfillRecipe } from './infill.ts'
import { infillSpacingMm, joinedShareOf, PATTERN_MODELS, zigzagCount } from './infill.ts'
import { infillTime, straightLines } from './infillTime.ts'
import type { LaidSeconds, LineSums, Motion } from './motion.ts'
import { createMemory } from './remember.ts'
import type { Spread, TravelSeconds } from './travels.ts'
import { routeAt, travelSeconds, travelSpreads } from './travels.ts'

/** Seconds of infill and of every move without plastic, which hang together: neither can be told without the other. */
export interface InfillSeconds extends LaidSeconds {
  readonly travels: readonly Spread[]
}

/**
 * From this share on a pattern goes over into solid lines, evenly, until it is them at 100 %: that
 * dense no printer draws its waves and cells any more (common practice, no source). Nor does it
 * ever take longer than solid lines do.
 */
const DENSE_FROM = 50

/**
 * Seconds of a recipe's infill. Between the spacings at which travels are known a sparser infill
 * may come out as taking longer by a hair, for its zigzags happen to end less well; then its time
 * holds for the denser one as well, so that hours never fall when infill is added.
 */
export function infillSeconds(
  census: Census,
  recipe: Recipe,
  motion: Motion,
  printer: Printer,
): InfillSeconds {
  const fixed = fixedOf(census, recipe, motion, printer)
  const { infillPct } = recipe
  if (!(infillPct > 0)) return drawn(fixed.own, 0)
  const here = capped(fixed, infillPct)
  const spacing = infillSpacingMm(recipe)
  const sparser = fixed.steps.find(({ spacingMm }) => spacingMm > spacing)
  const leastS = sparser?.leastS ?? fixed.bareS
  const sum = sumOf(here)
  return sum > 0 && sum < leastS ? scale(here, leastS / sum) : here
}

/** A pattern in a census as a printer drives it, whatever its share. */
interface Way {
  readonly census: Census
  readonly laid: Omit<InfillRecipe, 'infillPct'>
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
  /** The spacings at which travels are known, the narrowest first, and the most seconds at any as wide. */
  readonly steps: readonly { readonly spacingMm: number; readonly leastS: number }[]
}

/** Two speeds, the printer and a slower one, of two recipes. */
const remember = createMemory<Fixed>(8)

function fixedOf(census: Census, recipe: Recipe, motion: Motion, printer: Printer): Fixed {
  const { pattern, lineMm } = recipe
  const { speedMmS, accelMmS2, cornerMmS } = motion
  const { travelMmS, travelAccelMmS2, retractS } = printer
  const laid = [pattern, lineMm, joinedShareOf(recipe), speedMmS, accelMmS2, cornerMmS]
  return remember(census, [...laid, travelMmS, travelAccelMmS2, retractS], () =>
    makeFixed(census, recipe, motion, printer),
  )
}

function makeFixed(census: Census, recipe: Recipe, motion: Motion, printer: Printer): Fixed {
  const { pattern, lineMm } = recipe
  const own = wayOf(census, recipe, motion, printer)
  const lines = wayOf(census, { ...recipe, pattern: 'lines' }, motion, printer)
  const ways = { own, lines, solidS: sumOf(drawn(lines, 100)) }
  const bareS = sumOf(drawn(own, 0))
  const { directions, pathFactor } = PATTERN_MODELS[pattern]
  let leastS = bareS
  const steps = census.moves.oneWay.infill
    .toReversed()
    .map(({ spacingMm }) => {
      const infillPct = (100 * directions * pathFactor * lineMm) / spacingMm
      leastS = Math.max(leastS, sumOf(capped(ways, infillPct)))
      return { spacingMm, leastS }
    })
    .toReversed()
  return { ...ways, bareS, steps }
}

function wayOf(census: Census, recipe: Recipe, motion: Motion, printer: Printer): Way {
  const { pattern, lineMm, habits } = recipe
  const { travelMmS: speedMmS, travelAccelMmS2: accelMmS2, retractS } = printer
  return {
    census,
    laid: { pattern, lineMm, ...(habits === undefined ? {} : { habits }) },
    motion,
    straight: straightLines(census, recipe, motion),
    travels: travelSeconds(census, recipe, { speedMmS, accelMmS2, retractS }),
  }
}

/** Going over into solid lines, and never longer than they. */
function capped({ own, lines, solidS }: Ways, infillPct: number): InfillSeconds {
  const solid = Math.max(0, (infillPct - DENSE_FROM) / (100 - DENSE_FROM))
  const mixed =
    own.laid.pattern === 'lines' || solid === 0
      ? drawn(own, infillPct)
      : mix(drawn(own, infillPct), drawn(lines, infillPct), solid)
  const sum = sumOf(mixed)
  return sum > solidS ? scale(mixed, solidS / sum) : mixed
}

function drawn({ census, laid, motion, straight, travels }: Way, infillPct: number): InfillSeconds {
  const recipe = { ...laid, infillPct }
  const zigzags = zigzagCount(census, infillSpacingMm(recipe))
  const { cruiseS, turnS } = infillTime(census, recipe, straight, zigzags, motion)
  return { cruiseS, turnS, travels: travelSpreads(travels, routeAt(census, recipe)) }
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
