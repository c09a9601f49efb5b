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

/** What to ask of a weighing that nothing explains, in grams; it has taught nothing so far. */
export function strayMassWords(
  name: string,
  scaleG: number,
  foretoldG: Range,
  locale?: string,
): string {
  const grams = (value: number): string => formatWithUnit(value, 'g', locale)
  const causes = ['a brim or support left on', 'another spool', 'another recipe', 'another part']
  return (
    `“${name}” at ${grams(scaleG)} is far outside ${formatRange(foretoldG, grams)}: ` +
    `${causes.join(', ')}? It teaches nothing about the rest as long as you do not stand by it.`
  )
}

/** The same of a print by the clock. `takes` are times in words. */
export function strayTimeWords(name: string, took: string, takes: string): string {
  return (
    `“${name}” took ${took}, far outside ${takes}: paused, other speeds, another recipe? ` +
    `It teaches nothing about the rest as long as you do not stand by it.`
  )
}
