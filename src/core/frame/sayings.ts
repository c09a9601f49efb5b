import { formatAll, formatFixed } from '../words/format.ts'
import { massOdds, type Verdict } from './odds.ts'
import type { FrameSum, LeftOut, StrictestLimit } from './types.ts'

/** What every total has to say while parts are in no sum; null when none is left out. */
export function leftOutWords(count: number): string | null {
  return count === 0 ? null : `without ${count} ${count === 1 ? 'part' : 'parts'}`
}

/** What a total says of parts of which some layers were counted. */
export function coarseWords(count: number): string {
  return `coarse: ${count} ${count === 1 ? 'part' : 'parts'} not fully counted`
}

/** The same with their names and why, for where there is room. */
export function leftOutNames(leftOut: readonly LeftOut[]): string | null {
  const words = leftOutWords(leftOut.length)
  if (words === null) return null
  return `${words}: ${leftOut.map(({ name, why }) => `“${name}” (${why})`).join(', ')}`
}

/**
 * How the aircraft stands to its limit, in one sentence: the lines as they stand, how likely they end below, and what
 * growth makes of it. `growth` here is what is added for what is not known yet.
 */
export function standingWords({ ledger, doubt }: FrameSum, locale?: string): string {
  const { basicMassG, predictedMassG, limitG } = ledger
  const grams = (value: number): string => `${formatFixed(value, 1, locale)} g`
  if (limitG === null) {
    return `${grams(basicMassG)} as it stands, ${grams(predictedMassG)} with the growth to expect.`
  }
  const { chanceBelow, verdict } = massOdds(doubt, limitG)
  const sure = verdict === 'too close to say' ? ', too close to say' : ''
  const now = `${grams(basicMassG)} as it stands, ${apartWords(limitG - basicMassG, locale)} the limit of ${grams(limitG)}`
  const likely = `${chanceWords(chanceBelow, locale)} likely to end below${sure}`
  const turns = basicMassG <= limitG !== predictedMassG <= limitG
  const grown = `with the growth to expect ${grams(predictedMassG)}, ${apartWords(limitG - predictedMassG, locale)} it`
  return `${now} and ${likely}${turns ? '; but ' : '; '}${grown}.`
}

/** "2.0 g over the limit of 145.0 g for printed parts", or what an all-up limit leaves them. */
export function limitWords({ kind, printedG, leftG }: StrictestLimit, locale?: string): string {
  const grams = `${formatFixed(printedG, 1, locale)} g`
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
  return `${formatFixed(Math.abs(leftG), 1, locale)} g ${leftG < 0 ? 'over' : 'under'}`
}
