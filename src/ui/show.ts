import type { Range } from '../core/model/figures.ts'
import { formatFixed, formatGrams, formatMass, formatNumber } from '../core/words/format.ts'

/*
 * Figures in columns, where the unit stands in the head: bare, and with the same number of decimals down the column.
 * Everything else on the page uses core/words/format.ts as it is.
 */

/** A figure and its range, in the same unit. */
export interface Shown {
  readonly mid: string
  readonly range: string
}

/** Up to three significant digits. */
export function showNumber(value: number, digits: number): string {
  return formatNumber(value, undefined, digits)
}

/** A side of something that may be drawn in another unit: never 0 for what is small. */
export function showSide(mm: number): string {
  return showNumber(mm, mm < 1 ? 3 : 1)
}

/** Grams without their unit. */
export function showGrams(range: Range): Shown {
  return shown(range, formatGrams)
}

/** Money without its currency. */
export function showMoney(range: Range): Shown {
  return shown(range, money)
}

/** Two decimals, whatever they are, for a column of like figures. */
export function showFixed(value: number): string {
  return formatFixed(value, 2)
}

/** Grams with their unit, rounded as everywhere else on the page. */
export function showMass(massG: number): string {
  return trueMinus(formatMass(massG))
}

/** Hours and minutes as on a clock; minutes are rounded to five from ten hours on. */
export function showTime(range: Range): Shown {
  return shown(range, clock)
}

function shown(range: Range, format: (value: number) => string): Shown {
  const low = trueMinus(format(range.low))
  const high = trueMinus(format(range.high))
  return { mid: trueMinus(format(range.mid)), range: low === high ? '' : `${low}–${high}` }
}

/** Intl writes a hyphen, which is too short beside figures. */
export function trueMinus(text: string): string {
  return text.replace('-', '−')
}

function money(value: number): string {
  return Math.abs(value) < 99.995 ? formatFixed(value, 2) : showNumber(value, 0)
}

function clock(timeS: number): string {
  if (!Number.isFinite(timeS)) return '–'
  const step = timeS < 36_000 ? 1 : 5
  const minutes = Math.round(timeS / 60 / step) * step
  return `${Math.floor(minutes / 60)}:${String(minutes % 60).padStart(2, '0')}`
}
