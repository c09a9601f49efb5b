import type { Census } from '../model/census.ts'
import type { Printer } from '../model/figures.ts'
import { habitsOf } from '../model/habits.ts'
import type { Recipe } from '../model/settings.ts'
import { infillSpacingMm, PATTERN_MODELS } from './infill.ts'
import { infillTime } from './infillTime.ts'
import type { LaidSeconds, Motion } from './motion.ts'
import { createMemory } from './remember.ts'
import type { Spread } from './travels.ts'
import { travelSpreads } from './travels.ts'

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
  const drawn = (change: Partial<Recipe>): InfillSeconds =>
    drawnSeconds(census, { ...recipe, ...change }, motion, printer)
  if (!(recipe.infillPct > 0)) return drawn({})
  const { solidS, bareS, steps } = fixedOf(census, recipe, motion, printer)
  const here = capped(drawn, recipe, solidS)
  const spacing = infillSpacingMm(recipe)
  const sparser = steps.filter(({ spacingMm }) => spacingMm > spacing).map(({ sumS }) => sumS)
  const least = Math.max(bareS, ...sparser)
  const sum = sumOf(here)
  return sum > 0 && sum < least ? scale(here, least / sum) : here
}

type Drawn = (change: Partial<Recipe>) => InfillSeconds

/** Going over into solid lines, and never longer than they. */
function capped(drawn: Drawn, { infillPct, pattern }: Recipe, solidS: number): InfillSeconds {
  const solid = Math.max(0, (infillPct - DENSE_FROM) / (100 - DENSE_FROM))
  const mixed =
    pattern === 'lines' || solid === 0
      ? drawn({ infillPct })
      : mix(drawn({ infillPct }), drawn({ pattern: 'lines', infillPct }), solid)
  const sum = sumOf(mixed)
  return sum > solidS ? scale(mixed, solidS / sum) : mixed
}

/** What does not depend on how much infill is asked for. */
interface Fixed {
  readonly solidS: number
  /** Without infill. */
  readonly bareS: number
  /** Seconds at the spacings at which travels are known. */
  readonly steps: readonly { readonly spacingMm: number; readonly sumS: number }[]
}

/** Two speeds, the printer and a slower one, of two recipes. */
const remember = createMemory<Fixed>(8)

function fixedOf(census: Census, recipe: Recipe, motion: Motion, printer: Printer): Fixed {
  const { pattern, lineMm } = recipe
  const { speedMmS, accelMmS2, cornerMmS } = motion
  const { travelMmS, travelAccelMmS2, retractS } = printer
  const { joinedShare } = habitsOf(recipe)
  const laid = [pattern, lineMm, joinedShare, speedMmS, accelMmS2, cornerMmS]
  return remember(census, [...laid, travelMmS, travelAccelMmS2, retractS], () => {
    const drawn: Drawn = (change) => drawnSeconds(census, { ...recipe, ...change }, motion, printer)
    const { directions, pathFactor } = PATTERN_MODELS[pattern]
    const solidS = sumOf(drawn({ pattern: 'lines', infillPct: 100 }))
    const steps = census.moves.oneWay.infill.map(({ spacingMm }) => {
      const infillPct = (100 * directions * pathFactor * lineMm) / spacingMm
      return { spacingMm, sumS: sumOf(capped(drawn, { ...recipe, infillPct }, solidS)) }
    })
    return { solidS, bareS: sumOf(drawn({ infillPct: 0 })), steps }
  })
}

function drawnSeconds(
  census: Census,
  recipe: Recipe,
  motion: Motion,
  printer: Printer,
): InfillSeconds {
  return {
    ...infillTime(census, recipe, motion),
    travels: travelSpreads(census, recipe, printer),
  }
}

function sumOf({ cruiseS, turnS, travels }: InfillSeconds): number {
  return travels.reduce((sum, { seconds }) => sum + seconds, cruiseS + turnS)
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
