import type { Range } from '../model/figures.ts'
import { formatNumber } from './format.ts'

/** "inside 26.9 – 34.7 g; one reading in 3 is as far off". `span` are the ends in words. */
export function readingWords(
  netG: number,
  foretoldG: Range,
  span: string,
  chance: number,
  locale?: string,
): string {
  const where = netG < foretoldG.low || netG > foretoldG.high ? 'outside' : 'inside'
  return `${where} ${span}; ${oftenWords(chance, locale)}`
}

function oftenWords(chance: number, locale: string | undefined): string {
  if (chance > 0.5) return 'just about as expected'
  const one = Math.round(1 / Math.max(chance, 1e-9))
  if (one > 1000) return 'hardly one in a thousand is as far off'
  return `one reading in ${formatNumber(one, locale)} is as far off`
}
