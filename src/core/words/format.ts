import type { Range } from '../model/figures.ts'
import { massUnit, shownAs, shownOf } from './shownUnits.ts'

/*
 * Every number a user sees goes through here. At most three significant digits, since nothing in this program is known
 * better; `formatAll`, `formatFixed` and `formatGrams` are for those that are exact or have to agree to the eye.
 * `locale` is a BCP 47 tag; left out, the runtime's own. Intl on Node 20 has no watt or cubic units, hence the table.
 * Lengths and masses come in mm and g and are written in the units of shownUnits.ts.
 */

/** Labels behind a number, the same in every language. */
export const UNIT_LABELS = {
  g: 'g',
  kg: 'kg',
  mm: 'mm',
  cm: 'cm',
  m: 'm',
  mm2: 'mm²',
  cm2: 'cm²',
  mm3: 'mm³',
  cm3: 'cm³',
  s: 's',
  min: 'min',
  h: 'h',
  mmPerS: 'mm/s',
  mmPerS2: 'mm/s²',
  mm3PerS: 'mm³/s',
  gPerCm3: 'g/cm³',
  gPerH: 'g/h',
  W: 'W',
  kWh: 'kWh',
  MPa: 'MPa',
  GPa: 'GPa',
  degC: '°C',
} as const

export type Unit = keyof typeof UNIT_LABELS

/** Shown in place of what is not a number. */
const NOTHING = '–'
/** Keeps a number and its unit on one line. */
const GAP = '\u00a0'

/** Intl writes −0.001 as “-0” otherwise. */
const UNSIGNED_ZERO = { signDisplay: 'negative' } as const

const formatters = new Map<string, Intl.NumberFormat>()

/**
 * `Intl.NumberFormat` takes far longer to build than to use, and a slider drag formats hundreds of
 * numbers.
 */
function formatter(locale: string | undefined, options: Intl.NumberFormatOptions) {
  const key = `${locale ?? ''} ${JSON.stringify(options)}`
  const known = formatters.get(key)
  if (known) return known
  const fresh = new Intl.NumberFormat(locale, options)
  formatters.set(key, fresh)
  return fresh
}

/**
 * Up to three significant digits and at most `decimals` after the point; "–" for NaN and
 * infinities.
 */
export function formatNumber(value: number, locale?: string, decimals = 2): string {
  if (!Number.isFinite(value)) return NOTHING
  return formatter(locale, { maximumFractionDigits: decimals, ...UNSIGNED_ZERO }).format(
    roundFor(value, decimals),
  )
}

/**
 * A number as a box shows it and takes it back: ungrouped, since `.` and `,` are both decimal marks
 * there.
 */
export function formatTyped(value: number, digits: number, locale?: string): string {
  if (!Number.isFinite(value)) return NOTHING
  return formatter(locale, {
    maximumFractionDigits: digits,
    numberingSystem: 'latn',
    useGrouping: false,
    ...UNSIGNED_ZERO,
  }).format(value)
}

/**
 * With all its digits and at most `decimals` after the point: for what was typed, and limits that
 * are what they say.
 */
export function formatAll(value: number, decimals: number, locale?: string): string {
  return formatter(locale, { maximumFractionDigits: decimals }).format(value)
}

/** With just `decimals` after the point, so that figures in a column agree to the eye. */
export function formatFixed(value: number, decimals: number, locale?: string): string {
  if (!Number.isFinite(value)) return NOTHING
  return formatter(locale, {
    minimumFractionDigits: decimals,
    maximumFractionDigits: decimals,
    ...UNSIGNED_ZERO,
  }).format(value)
}

/**
 * A number with its unit, `decimals` at most in the unit given; the bare "–" where there is no
 * number.
 */
export function formatWithUnit(value: number, unit: Unit, locale?: string, decimals = 2): string {
  if (!Number.isFinite(value)) return NOTHING
  const as = shownAs(UNIT_LABELS[unit])
  return `${formatNumber(shownOf(value, as), locale, decimals + as.finer)}${GAP}${as.label}`
}

/**
 * Grams without their unit, so that what stands in a column adds up to what stands below it: whole
 * from 1000 g on, else to the tenth, below 1 g to the hundredth; never zero for what is not.
 * With `finest` 1 nothing goes beyond the tenth, for sums beside sums. Ounces have three decimals,
 * whatever they are.
 */
export function formatGrams(massG: number, locale?: string, finest: 1 | 2 = 2): string {
  const as = shownAs('g')
  if (as.per !== 1) return formatOunces(shownOf(massG, as), locale, finest)
  const size = Math.abs(massG)
  if (size >= 999.95) return formatFixed(massG, 0, locale)
  if (size >= 0.995 || finest === 1) return formatFixed(massG, 1, locale)
  return size > 0 && size < 0.005
    ? `<${formatFixed(0.01, 2, locale)}`
    : formatFixed(massG, 2, locale)
}

/** Three decimals of an ounce are 0.03 g. */
function formatOunces(massOz: number, locale: string | undefined, finest: 1 | 2): string {
  return finest === 2 && massOz > 0 && massOz < 0.0005
    ? `<${formatFixed(0.001, 3, locale)}`
    : formatFixed(massOz, 3, locale)
}

/** Grams or ounces with their unit. */
export function formatMass(massG: number, locale?: string): string {
  return Number.isFinite(massG) ? `${formatGrams(massG, locale)}${GAP}${massUnit()}` : NOTHING
}

/** Metres of filament; kilometres do not occur. Below 1 m in cm. Or feet, and inches below one. */
export function formatFilament(lengthM: number, locale?: string): string {
  return inUnit(lengthM * 100, 'cm', 100, 'm', locale)
}

/** mm³; cm³ from 1000 mm³ on. */
export function formatVolume(volumeMm3: number, locale?: string): string {
  return inUnit(volumeMm3, 'mm3', 1000, 'cm3', locale)
}

/** Share (1 is 100 %) as per cent. */
export function formatPercent(share: number, locale?: string): string {
  if (!Number.isFinite(share)) return NOTHING
  const pct = share * 100
  const maximumFractionDigits = Math.abs(roundSignificant(pct)) < 10 ? 1 : 0
  const shown = roundFor(pct, maximumFractionDigits)
  return `${formatter(locale, { maximumFractionDigits, ...UNSIGNED_ZERO }).format(shown)}${GAP}%`
}

/**
 * A time as read off a kitchen clock: "45 s", "45 min", "3 h 20 min". From 10 h on to five minutes,
 * from 100 h on to the hour; more would pretend to know.
 */
export function formatHours(timeS: number, locale?: string): string {
  if (!Number.isFinite(timeS)) return NOTHING
  const sign = timeS < 0 ? '−' : ''
  const seconds = Math.abs(timeS)
  const whole = (value: number, unit: Unit): string =>
    `${formatter(locale, { maximumFractionDigits: 0 }).format(value)}${GAP}${UNIT_LABELS[unit]}`
  if (Math.round(seconds) === 0) return whole(0, 's')
  if (Math.round(seconds) < 60) return sign + whole(Math.round(seconds), 's')
  const step = seconds < 36_000 ? 1 : seconds < 360_000 ? 5 : 60
  const minutes = Math.round(seconds / 60 / step) * step
  const hours = Math.floor(minutes / 60)
  if (hours === 0) return sign + whole(minutes, 'min')
  const rest = minutes % 60
  return sign + whole(hours, 'h') + (rest === 0 ? '' : ` ${whole(rest, 'min')}`)
}

/** Money in an ISO 4217 currency: with its small coins below 100, without above. */
export function formatMoney(value: number, currency: string, locale?: string): string {
  if (!Number.isFinite(value)) return NOTHING
  const rounded = roundSignificant(value)
  const options: Intl.NumberFormatOptions = { style: 'currency', currency, ...UNSIGNED_ZERO }
  if (Math.abs(rounded) >= 100) options.maximumFractionDigits = 0
  return formatter(locale, options).format(Math.abs(rounded) < 1 ? value : rounded)
}

/**
 * `+` before what is more than zero: for differences. The text comes from one of the formatters
 * above.
 */
export function withSign(value: number, text: string): string {
  const zero = !/[1-9]/.test(text)
  // Too small to say, and so is its sign.
  return value > 0 && !zero && !text.startsWith('<') ? `+${text}` : text
}

/** "7.4 g – 8.9 g" from any formatter; one text when both ends read the same. */
export function formatRange(range: Range, format: (value: number) => string): string {
  const low = format(range.low)
  const high = format(range.high)
  return low === high ? low : `${low}${GAP}– ${high}`
}

/** Switches to the larger unit by the rounded value, so that 999.9 g reads 1 kg and not 1,000 g. */
function inUnit(
  value: number,
  small: Unit,
  factor: number,
  large: Unit,
  locale: string | undefined,
): string {
  const [few, many] = [shownAs(UNIT_LABELS[small]), shownAs(UNIT_LABELS[large])]
  // The larger unit begins at one of it; where both are shown in the same there is no larger one.
  const most = few.label === many.label ? Infinity : few.per === 1 ? factor : factor * many.per
  return Math.abs(roundSignificant(value)) < most
    ? formatWithUnit(value, small, locale)
    : formatWithUnit(value / factor, large, locale)
}

/**
 * What a formatter that leaves `decimals` gives three significant digits of; never rounded twice,
 * 1.747 → 1.75 → 1.8.
 */
function roundFor(value: number, decimals: number): number {
  return Math.abs(value) < 10 ** (2 - decimals) ? value : roundSignificant(value)
}

/** Three significant digits. */
function roundSignificant(value: number): number {
  return Number(value.toPrecision(3))
}
