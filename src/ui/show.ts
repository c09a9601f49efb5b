import type { Range } from '../core/model/figures.ts'
import { formatFixed, formatGrams, formatMass, formatNumber } from '../core/words/format.ts'
import { shownAs, shownOf } from '../core/words/shownUnits.ts'

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

/**
 * A side of something that may be drawn in another unit: never 0 for what is small. Without its
 * unit.
 */
export function showSide(mm: number): string {
  return showMm(mm, mm < 1 ? 3 : 1)
}

/** A length without its unit, `digits` behind the point of a millimetre. */
export function showMm(mm: number, digits: number): string {
  const as = shownAs('mm')
  return showNumber(shownOf(mm, as), digits + as.finer)
}

/** A length with its unit. */
export function showLength(mm: number, digits: number): string {
  return `${showMm(mm, digits)} ${shownAs('mm').label}`
}

/** Keeps each number of a sentence on the line of its unit, and of the lines it counts. */
export function onOneLine(words: string): string {
  return words.replaceAll(/(?<=\d) (?=(?:mm|in|g|lines)\b)/g, '\u{A0}')
}

/** An area with its unit, up to three significant digits; mm² below 10 of them. */
export function showArea(areaMm2: number): string {
  const as = shownAs('mm²')
  if (as.per !== 1) return `${showNumber(shownOf(areaMm2, as), 5)} ${as.label}`
  return areaMm2 < 10 ? `${showNumber(areaMm2, 2)} mm²` : `${showNumber(areaMm2 / 100, 1)} cm²`
}

/** Grams or ounces without their unit. */
export function showGrams(range: Range): Shown {
  return shown(range, formatGrams)
}

/** Money of an ISO 4217 currency without its code; with its small coins below 100. */
export function showMoney(range: Range, currency: string): Shown {
  return shown(range, (value) =>
    Math.abs(value) < 99.995 ? showCoins(value, currency) : showNumber(value, 0),
  )
}

/**
 * Money to the small coin, for a column of like figures: two decimals, none where a currency has no
 * smaller coin.
 */
export function showCoins(value: number, currency: string): string {
  return formatFixed(value, coinDecimals(currency))
}

/** Two decimals, whatever they are, for a column of like figures. */
export function showFixed(value: number): string {
  return formatFixed(value, 2)
}

/** Grams or ounces with their unit, rounded as everywhere else on the page. */
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

const DECIMALS = new Map<string, number>()

/** Thousandths, which some currencies have, would pretend to know. */
function coinDecimals(currency: string): number {
  const known = DECIMALS.get(currency)
  if (known !== undefined) return known
  const style = { style: 'currency', currency } as const
  const { maximumFractionDigits = 2 } = new Intl.NumberFormat('en', style).resolvedOptions()
  const decimals = Math.min(2, maximumFractionDigits)
  DECIMALS.set(currency, decimals)
  return decimals
}

function clock(timeS: number): string {
  if (!Number.isFinite(timeS)) return '–'
  const step = timeS < 36_000 ? 1 : 5
  const minutes = Math.round(timeS / 60 / step) * step
  return `${Math.floor(minutes / 60)}:${String(minutes % 60).padStart(2, '0')}`
}
