import { formatAll, formatGrams } from '../words/format.ts'
import { massUnit } from '../words/shownUnits.ts'
import { massOdds, type Verdict } from './odds.ts'
import type { FrameSum, LeftOut, StrictestLimit } from './types.ts'

/** "16 pieces and 3 spare": those that fly, and those in the bag where there are any. */
export function piecesWords(flying: number, spares: number): string {
  return `${flying} ${piecesNoun(flying, spares)}`
}

/** The same where the first number stands by itself. */
export function piecesNoun(flying: number, spares: number): string {
  return `${flying === 1 ? 'piece' : 'pieces'}${spares === 0 ? '' : ` and ${spares} spare`}`
}

/**
 * What a total has to say while parts are not in it; null when none is left out. Weighed parts are
 * in every mass, and so left out of cost and hours only.
 */
export function leftOutWords(
  leftOut: readonly LeftOut[],
  of: 'mass' | 'cost and hours',
): string | null {
  const count = of === 'mass' ? outOfMass(leftOut).length : leftOut.length
  return count === 0 ? null : `without ${count} ${count === 1 ? 'part' : 'parts'}`
}

/** Both in one, for a line that says mass, cost and hours. */
export function leftOutOfAll(leftOut: readonly LeftOut[]): string | null {
  const mass = leftOutWords(leftOut, 'mass')
  const others = leftOutWords(leftOut, 'cost and hours')
  if (mass === others) return mass
  return [...(mass === null ? [] : [mass]), `cost and hours ${others}`].join(', ')
}

const outOfMass = (leftOut: readonly LeftOut[]): readonly LeftOut[] =>
  leftOut.filter(({ weighed }) => !weighed)

/** What a total says of parts of which some layers were counted. */
export function coarseWords(count: number): string {
  return `coarse: ${count} ${count === 1 ? 'part' : 'parts'} not fully counted`
}

/** The same with their names and why, for where there is room. */
export function leftOutNames(leftOut: readonly LeftOut[]): string | null {
  const words = leftOutOfAll(leftOut)
  if (words === null) return null
  const names = leftOut.map(
    ({ name, why, weighed }) => `“${name}” (${why}${weighed ? ', by the scale' : ''})`,
  )
  return `${words}: ${names.join(', ')}`
}

/**
 * How the aircraft stands to its limit, in one sentence: the lines as they stand, how likely they
 * end below, and what growth makes of it. `growth` here is what is added for what is not known yet.
 */
export function standingWords({ ledger, doubt }: FrameSum, locale?: string): string {
  const { basicMassG, predictedMassG, limitG } = ledger
  const grams = (value: number): string => `${formatGrams(value, locale, 1)} ${massUnit()}`
  if (limitG === null) {
    return `${grams(basicMassG)} as it stands, ${grams(predictedMassG)} with the growth to expect.`
  }
  const { chanceBelow, verdict } = massOdds(doubt, limitG)
  const sure = verdict === 'too close to say' ? ', too close to say' : ''
  const now =
    `${grams(basicMassG)} as it stands, ` +
    `${apartWords(limitG - basicMassG, locale)} the limit of ${grams(limitG)}`
  const likely = `${chanceWords(chanceBelow, locale)} likely to end below${sure}`
  const turns = basicMassG <= limitG !== predictedMassG <= limitG
  const grown = `with the growth to expect ${grams(predictedMassG)}, ${apartWords(limitG - predictedMassG, locale)} it`
  return `${now} and ${likely}${turns ? '; but ' : '; '}${grown}.`
}

/** "2.0 g over the limit of 145.0 g for printed parts", or what an all-up limit leaves them. */
export function limitWords({ kind, printedG, leftG }: StrictestLimit, locale?: string): string {
  const grams = `${formatGrams(printedG, locale, 1)} ${massUnit()}`
  const of =
    kind === 'printed'
      ? `the printed limit of ${grams}`
      : `the ${grams} that the all-up limit leaves`
  return `${apartWords(leftG, locale)} ${of}`
}

/** Never a bare yes: near a line it says that nobody can tell. */
export const VERDICT_WORDS: Readonly<Record<Verdict, string>> = {
  below: 'stays below',
  above: 'ends above',
  'too close to say': 'too close to say',
}

/** No model of errors knows its own tails better. */
const LEAST_CHANCE = 1e-4

/** A chance as a number to go on with: to four decimals, never a full 0 or 1. */
export function roundChance(chance: number): number {
  const bounded = Math.min(1 - LEAST_CHANCE, Math.max(LEAST_CHANCE, chance))
  return Math.round(bounded * 10_000) / 10_000
}

/** A chance as per cent; never a full 0 or 100. */
export function chanceWords(chance: number, locale?: string): string {
  const percent = (share: number): string => `${formatAll(share * 100, 2, locale)} %`
  if (chance > 1 - LEAST_CHANCE) return `>${percent(1 - LEAST_CHANCE)}`
  if (chance < LEAST_CHANCE) return `<${percent(LEAST_CHANCE)}`
  if (chance > 0.99) return '>99 %'
  if (chance < 0.01) return '<1 %'
  return `${Math.round(chance * 100)} %`
}

function apartWords(leftG: number, locale?: string): string {
  const apart = formatGrams(Math.abs(leftG), locale, 1)
  const side = leftG < 0 ? 'over' : 'under'
  if (leftG === 0) return 'just at'
  return apart === formatGrams(0, locale, 1) ? `just ${side}` : `${apart} ${massUnit()} ${side}`
}
