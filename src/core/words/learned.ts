import type { Range } from '../model/figures.ts'
import { formatNumber, formatRange, formatWithUnit } from './format.ts'

/** "Your PETG on this printer prints 3.1 ± 0.9 % light, from 4 weighings." */
export function learnedWords(
  plastic: string,
  factor: Range,
  weighings: number,
  locale?: string,
): string {
  const { low, mid, high } = factor
  const apart = formatNumber(Math.abs(mid - 1) * 100, locale, 1)
  const reach = formatNumber(((high - low) / 2) * 100, locale, 1)
  const from = `from ${formatNumber(weighings, locale)} weighing${weighings === 1 ? '' : 's'}`
  if (apart === '0')
    return `Your ${plastic} on this printer prints as calculated, ± ${reach} %, ${from}.`
  const way = mid < 1 ? 'light' : 'heavy'
  return `Your ${plastic} on this printer prints ${apart} ± ${reach} % ${way}, ${from}.`
}

/** "This printer takes 8 ± 4 % longer than calculated, from 2 timed prints." */
export function learnedHoursWords(factor: Range, prints: number, locale?: string): string {
  const { low, mid, high } = factor
  const apart = formatNumber(Math.abs(mid - 1) * 100, locale, 1)
  const reach = formatNumber(((high - low) / 2) * 100, locale, 1)
  const from = `from ${formatNumber(prints, locale)} timed print${prints === 1 ? '' : 's'}`
  if (apart === '0') return `This printer takes as long as calculated, ± ${reach} %, ${from}.`
  const way = mid < 1 ? 'less' : 'longer'
  return `This printer takes ${apart} ± ${reach} % ${way} than calculated, ${from}.`
}

/** What came of a reading: "3.1 % above calculated; it counts". `ratio` is reading ÷ calculated. */
export function fateWords(fate: Fate, ratio: number | null, locale?: string): string {
  const off = ratio === null ? '' : `${offWords(ratio, locale)}; `
  return `${off}${FATES[fate]}`
}

type Fate = keyof typeof FATES

const FATES = {
  heard: 'it counts, and what shares its errors follows',
  'set aside': 'too far off, so it teaches nothing',
  alone: 'it counts, and teaches nothing while the part has no figures',
  waits: 'it waits for parts that have no figures',
  'part at odds': 'not heard while it and a part’s weighing contradict each other',
  'part gone': 'not heard, since something of it is gone',
  'not comparable': 'not heard, since what it was of has changed',
} as const

function offWords(ratio: number, locale: string | undefined): string {
  const pct = formatNumber(Math.abs(ratio - 1) * 100, locale, 1)
  if (pct === '0') return 'as calculated'
  return `${pct} % ${ratio < 1 ? 'below' : 'above'} calculated`
}

/** What to ask of a weighing that nothing explains, in grams; it has taught nothing so far. */
export function strayMassWords(
  name: string,
  scaleG: number,
  foretoldG: Range,
  takenG: Range,
  locale?: string,
): string {
  const grams = (value: number): string => formatWithUnit(value, 'g', locale)
  const causes = ['a brim or support left on', 'another spool', 'another recipe', 'another part']
  return (
    `“${name}” at ${grams(scaleG)} is far outside ${formatRange(foretoldG, grams)}, and from ` +
    `${grams(takenG.low)} to ${grams(takenG.high)} is taken without asking: ` +
    `${causes.join(', ')}? It teaches nothing about the rest as long as you do not stand by it.`
  )
}

/** The same of a print by the clock. `takes` and `taken` are times in words. */
export function strayTimeWords(name: string, took: string, takes: string, taken: string): string {
  return (
    `“${name}” took ${took}, far outside ${takes}, and ${taken} is taken without asking: ` +
    'paused, other speeds, another recipe? ' +
    `It teaches nothing about the rest as long as you do not stand by it.`
  )
}
