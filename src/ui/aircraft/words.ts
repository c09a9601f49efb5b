import type { MassBasis } from '../../core/model/aircraft.ts'
import type { LedgerGroup } from '../../core/frame/ledger.ts'
import type { Range } from '../../core/model/figures.ts'
import { formatFixed, formatGrams, formatMoney } from '../../core/words/format.ts'
import { massUnit, shownAs, shownOf } from '../../core/words/shownUnits.ts'
import { trueMinus } from '../show.ts'

export const GROUP_WORDS: Readonly<Record<LedgerGroup, string>> = {
  printed: 'Printed parts',
  fasteners: 'Fasteners',
  structure: 'Structure',
  drive: 'Drive',
  power: 'Power',
  electronics: 'Electronics',
  payload: 'Payload',
  other: 'Other',
}

export const BASIS_WORDS: Readonly<Record<MassBasis, string>> = {
  published: 'published',
  computed: 'computed',
  memory: 'from memory',
  typed: 'typed',
}

/**
 * Grams to a tenth, however small, and whole from 1000 g on, or ounces: for sums that have to agree
 * to the eye. Without the unit.
 */
export function tenthG(massG: number): string {
  return trueMinus(formatGrams(massG, undefined, 1))
}

/** The same with the unit. */
export function tenthMass(massG: number): string {
  return `${tenthG(massG)} ${massUnit()}`
}

/** Grams of one small piece, without the unit; ounces to a thousandth, or finer below a tenth. */
export function pieceG(massG: number): string {
  const as = shownAs('g')
  if (as.per !== 1) return ounces(shownOf(massG, as))
  return massG >= 0.995 && massG < 9.995 ? formatFixed(massG, 2) : formatGrams(massG)
}

/** One small piece with its unit. */
export function pieceMass(massG: number): string {
  return `${pieceG(massG)} ${massUnit()}`
}

/**
 * "3.1–4.0 mm", both ends to the same decimal; one figure where both read the same. In the
 * builder's own unit where that is another.
 */
export function spanWords(range: Range, unit: string, digits = 2): string {
  const as = shownAs(unit)
  const [from, to] = [shownOf(range.low, as), shownOf(range.high, as)]
  const most = digits + as.finer
  const decimals = Math.max(decimalsOf(from, most), decimalsOf(to, most))
  const low = fixed(from, decimals)
  const high = fixed(to, decimals)
  return low === high ? `${low} ${as.label}` : `${low}–${high} ${as.label}`
}

/** A figure with its unit, or the builder's own in its place. */
export function measureWords(value: number, unit: string, digits: number): string {
  const as = shownAs(unit)
  return `${figureWords(shownOf(value, as), digits + as.finer)} ${as.label}`
}

/** Grams of the whole aircraft from–to, to the gram. */
export function spanG({ low, high }: Range): string {
  const as = shownAs('g')
  const [from, to] = [low, high].map((massG) => formatFixed(shownOf(massG, as), as.finer))
  return trueMinus(from === to ? `${from} ${as.label}` : `${from}–${to} ${as.label}`)
}

/** Grams of one piece from–to. */
export function pieceSpan({ low, high }: Range): string {
  const [from, to] = [pieceG(low), pieceG(high)]
  return from === to ? `${from} ${massUnit()}` : `${from}–${to} ${massUnit()}`
}

/** Money from–to; null where both ends read the same. */
export function moneySpan({ low, high }: Range, currency: string): string | null {
  const [from, to] = [formatMoney(low, currency), formatMoney(high, currency)]
  return from === to ? null : `${from}–${to}`
}

/** A figure with all its decimals, so that 7 m/s beside 6.5 reads 7.0. */
export function figureWords(value: number, digits: number): string {
  return Number.isFinite(value) ? fixed(value, decimalsOf(value, digits)) : '–'
}

function ounces(value: number): string {
  if (value > 0 && value < 0.00005) return `<${formatFixed(0.0001, 4)}`
  return formatFixed(value, value < 0.1 ? 4 : 3)
}

/** Decimals left when no more than three digits count. */
function decimalsOf(value: number, digits: number): number {
  const size = Math.abs(value)
  const whole = size < 0.0995 ? -1 : size < 0.995 ? 0 : size < 9.995 ? 1 : size < 99.95 ? 2 : 3
  return Math.max(0, Math.min(digits, 3 - whole))
}

function fixed(value: number, decimals: number): string {
  // Three digits at most: 1,234 reads 1,230. Smaller ones are rounded once: 1.747 through 1.75
  // would read 1.8.
  const rounded = Math.abs(value) < 999.5 ? value : Number(value.toPrecision(3))
  return trueMinus(formatFixed(rounded, decimals))
}
