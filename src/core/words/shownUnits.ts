/*
 * The units a builder reads and types in. Everything is computed and kept in millimetres and grams; only here they
 * become others. Like the language of the browser, the choice is one for the whole program: `showUnits` is called by
 * whoever knows it (the page, from the workshop), and never in a worker or by the command, which stay metric.
 *
 * 1 in = 25.4 mm exactly (international inch, 1959) and 1 oz = 28.349 523 125 g exactly (avoirdupois ounce, a sixteenth
 * of the international pound of 453.592 37 g): NIST Special Publication 811 (2008), appendix B.8, and NIST Handbook 44,
 * appendix C.
 *
 * What is a name stays as it is: M3 × 16, a nozzle of 0.4 mm, a rule's “250 g”. So do speeds, densities and prices a
 * kilogram, which printers, spools and shops state in metric units everywhere (common practice, no source).
 */

export interface ShownUnits {
  readonly length: 'mm' | 'in'
  readonly mass: 'g' | 'oz'
}

export const METRIC: ShownUnits = { length: 'mm', mass: 'g' }

const MM_PER_INCH = 25.4
const G_PER_OUNCE = 28.349523125

/** How a figure kept in one unit is shown in another. */
export interface ShownAs {
  readonly label: string
  /** What is kept of one that is shown: 25.4 for millimetres shown in inches. */
  readonly per: number
  /** Decimals more than in the unit that is kept, so that a tenth of a millimetre is not lost. */
  readonly finer: number
}

const SQUARE_INCH_MM2 = MM_PER_INCH ** 2
const CUBIC_INCH_MM3 = MM_PER_INCH ** 3
const DM2_PER_SQUARE_FOOT = (12 * MM_PER_INCH) ** 2 / 1e4

const INCHES: Readonly<Record<string, ShownAs>> = {
  mm: { label: 'in', per: MM_PER_INCH, finer: 2 },
  cm: { label: 'in', per: MM_PER_INCH / 10, finer: 1 },
  m: { label: 'ft', per: (12 * MM_PER_INCH) / 1000, finer: 0 },
  'mm²': { label: 'in²', per: SQUARE_INCH_MM2, finer: 3 },
  'cm²': { label: 'in²', per: SQUARE_INCH_MM2 / 100, finer: 1 },
  'dm²': { label: 'in²', per: SQUARE_INCH_MM2 / 1e4, finer: 0 },
  'mm³': { label: 'in³', per: CUBIC_INCH_MM3, finer: 4 },
  'cm³': { label: 'in³', per: CUBIC_INCH_MM3 / 1000, finer: 2 },
}

const OUNCES: Readonly<Record<string, ShownAs>> = {
  g: { label: 'oz', per: G_PER_OUNCE, finer: 2 },
  kg: { label: 'oz', per: G_PER_OUNCE / 1000, finer: 0 },
}

/**
 * Wing loading, which those who weigh in ounces give for a square foot whatever they measure in.
 */
const OUNCES_A_FOOT: ShownAs = {
  label: 'oz/ft²',
  per: G_PER_OUNCE / DM2_PER_SQUARE_FOOT,
  finer: 0,
}

let shown: ShownUnits = METRIC

/** Shows everything in these units from now on; what is already drawn has to be drawn anew. */
export function showUnits(units: ShownUnits): void {
  shown = units
}

/** How what is kept in a unit, by its label, is shown: itself where nothing else was chosen. */
export function shownAs(label: string): ShownAs {
  const priced = /^(.+)\/(dm²|m)$/.exec(label)
  if (label === 'g/dm²' && shown.mass === 'oz') return OUNCES_A_FOOT
  // Money for an area or a length: what it costs per in² is as much less as an in² is smaller.
  if (priced !== null && label !== 'g/dm²') {
    const { label: below, per, finer } = shownAs(priced[2] ?? '')
    return { label: `${priced[1]}/${below}`, per: 1 / per, finer: finer + (per < 1 ? 2 : 0) }
  }
  const other =
    (shown.length === 'in' ? INCHES[label] : undefined) ??
    (shown.mass === 'oz' ? OUNCES[label] : undefined)
  return other ?? { label, per: 1, finer: 0 }
}

/** `g` or `oz`, to stand behind a figure or in the head of a column. */
export function massUnit(): string {
  return shownAs('g').label
}

/** `mm` or `in`. */
export function lengthUnit(): string {
  return shownAs('mm').label
}

/**
 * What was typed, as it is kept. Rounded to twelve digits, so that 0.3 in are 7.62 mm and no
 * 7.619 999 999 999 999.
 */
export function keptOf(value: number, as: ShownAs): number {
  return as.per === 1 ? value : Number((value * as.per).toPrecision(12))
}

/** What is kept, as it is shown, rounded to twelve digits likewise; formatters round it further. */
export function shownOf(value: number, as: ShownAs): number {
  return as.per === 1 ? value : Number((value / as.per).toPrecision(12))
}
