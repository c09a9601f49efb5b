import { parseArgs } from 'node:util'
import {
  PIECES_LIMITS,
  ZONE_PCT_DEFAULT,
  ZONE_PCT_LIMITS,
  ZONES_MOST,
  isWithin,
} from '../core/data/limits.ts'
import { MATERIALS } from '../core/data/materials.ts'
import {
  allCurrencies,
  currencyForLocale,
  materialInCurrency,
  startingPrices,
} from '../core/data/prices.ts'
import { PRINTER_DEFAULT } from '../core/data/printers.ts'
import { ROLES } from '../core/data/roles.ts'
import type { Material, Prices, Printer } from '../core/model/figures.ts'
import type { KnownHabits } from '../core/model/habits.ts'
import type { LengthUnit } from '../core/model/mesh.ts'
import { RECIPE_DEFAULTS } from '../core/model/settings.ts'
import type { Recipe } from '../core/model/settings.ts'
import { habitsFrom } from './habits.ts'
import { isJson, materialFrom, printerFrom, recipeFrom, textOf } from './settings.ts'
import { LENGTH_UNITS, UsageError } from './usage.ts'

export interface PriceOptions {
  readonly files: readonly string[]
  readonly recipe: Recipe
  readonly material: Material
  readonly printer: Printer
  readonly prices: Prices
  readonly quantity: number
  /** For formats that state none. */
  readonly unit: LengthUnit
  readonly json: boolean
  /** Meshes whose insides get infills of their own; where two overlap, the later one holds. */
  readonly zones: readonly ZoneOption[]
  /** One line of JSON a part, as it comes. */
  readonly lines: boolean
  /** Loose bodies thinner than a line stay in. */
  readonly keepsHairs: boolean
  /** All layers are counted, however long that takes. */
  readonly full: boolean
}

export interface ZoneOption {
  /** As given, for the report. */
  readonly file: string
  /** Where it is read. */
  readonly path: string
  /** 0–100. */
  readonly infillPct: number
}

/**
 * Reads the command line; null when help is asked for. `readText` reads a file of recipe or habits,
 * `locale` decides the currency. Throws UsageError.
 */
export function parseOptions(
  args: readonly string[],
  readText: (path: string) => string,
  locale: string,
): PriceOptions | null {
  const { values, positionals } = parseFlags(args)
  if (values.help === true) return null
  if (positionals.length === 0) {
    throw new UsageError('No mesh file is given. Name one or more after the options; see --help.')
  }
  for (const only of ['lessons', 'loads', 'spools', 'printers'] as const) {
    if (values[only] === undefined) continue
    throw new UsageError(`--${only} goes with --frame only; see --help.`)
  }
  if (values.stiffness !== undefined) {
    throw new UsageError('--stiffness goes with --frame only; see --help.')
  }
  if (values.find !== undefined) {
    throw new UsageError('--find goes with --frame only; see --help.')
  }
  if (values.coupon !== undefined) {
    throw new UsageError('--coupon goes with --frame only; see --help.')
  }
  const currency = currencyOf(values.currency, locale)
  const materials = MATERIALS.map((material) => materialInCurrency(material, currency))
  return {
    files: positionals,
    recipe: values.recipe === undefined ? RECIPE_DEFAULTS : recipeOf(values.recipe, readText),
    material: materialFrom(values.material ?? 'pla', materials),
    printer: withHabits(
      values.printer === undefined ? PRINTER_DEFAULT : printerFrom(values.printer),
      values.habits === undefined ? undefined : habitsFrom(values.habits, readText),
    ),
    prices: startingPrices(currency),
    quantity: quantityOf(values.quantity),
    unit: unitOf(values.unit),
    json: values.json === true,
    lines: values.lines === true,
    keepsHairs: values['keep-hairs'] === true,
    full: values.full === true,
    zones: zonesOf(values.zone, positionals),
  }
}

/** Options that may be given several times. */
const REPEATED: ReadonlySet<string> = new Set(['zone'])

/**
 * The options as given. Throws UsageError for one that does not exist or is given twice, since
 * neither value could be meant alone, and for a file without a name, which would be the folder.
 */
export function parseFlags(args: readonly string[]) {
  const parsed = parseOrRefuse(args)
  if (parsed.positionals.includes('')) {
    throw new UsageError('A file is given as “”, without a name. Leave it out, or name it.')
  }
  const seen = new Set<string>()
  for (const token of parsed.tokens) {
    if (token.kind !== 'option') continue
    if (seen.has(token.name) && !REPEATED.has(token.name)) {
      throw new UsageError(
        `--${token.name} is given more than once. Keep one; parts that differ are priced each kind by itself.`,
      )
    }
    seen.add(token.name)
  }
  return parsed
}

function parseOrRefuse(args: readonly string[]) {
  try {
    return parseArgs({
      args: [...args],
      allowPositionals: true,
      tokens: true,
      options: {
        frame: { type: 'string' },
        toolpath: { type: 'string' },
        lessons: { type: 'string' },
        loads: { type: 'string' },
        find: { type: 'string' },
        spools: { type: 'string' },
        printers: { type: 'string' },
        coupon: { type: 'string' },
        recipe: { type: 'string' },
        zone: { type: 'string', multiple: true },
        material: { type: 'string' },
        printer: { type: 'string' },
        habits: { type: 'string' },
        quantity: { type: 'string' },
        unit: { type: 'string' },
        currency: { type: 'string' },
        json: { type: 'boolean' },
        lines: { type: 'boolean' },
        'keep-hairs': { type: 'boolean' },
        full: { type: 'boolean' },
        stiffness: { type: 'boolean' },
        help: { type: 'boolean', short: 'h' },
      },
    })
  } catch (error) {
    throw new UsageError(`${whyRefused(error)} See --help.`)
  }
}

/** What Node says of options, in our words where it is one of the usual slips. */
function whyRefused(error: unknown): string {
  const said = error instanceof Error ? error.message : String(error)
  const [, unknown] = /^Unknown option '([^']*)'/.exec(said) ?? []
  if (unknown !== undefined) {
    return `There is no option “${unknown}”; a file of that name goes behind a “--” of its own.`
  }
  const [, lacking] =
    /'(?:-\w, )?(--[\w-]+)(?: <value>)?' argument (?:missing|is ambiguous)/.exec(said) ?? []
  if (lacking !== undefined) {
    return `${lacking} needs a value; one that begins with a dash is written ${lacking}=-1.`
  }
  return said.endsWith('.') ? said : `${said}.`
}

/**
 * A printer of which this is known besides; what was known of it before stays where nothing new is
 * said.
 */
export function withHabits(printer: Printer, told: KnownHabits | undefined): Printer {
  return told === undefined ? printer : { ...printer, habits: { ...printer.habits, ...told } }
}

/** JSON, a role's id, or the path of a file that holds JSON. */
function recipeOf(given: string, readText: (path: string) => string): Recipe {
  if (isJson(given) || given in ROLES) return recipeFrom(given)
  return recipeFrom(
    textOf('--recipe', `JSON nor a role (${Object.keys(ROLES).join(', ')})`, given, readText),
  )
}

function quantityOf(given: string | undefined): number {
  if (given === undefined) return 1
  const quantity = Number(given)
  const limits = PIECES_LIMITS.quantity
  if (/^\d+$/.test(given) && isWithin(limits, quantity)) return quantity
  const span = `${limits.min} to ${limits.max}`
  throw new UsageError(`--quantity is “${given}”; it must be a whole number from ${span}.`)
}

function zonesOf(
  given: readonly string[] | undefined,
  files: readonly string[],
): readonly ZoneOption[] {
  if (given === undefined) return []
  if (files.length !== 1) {
    throw new UsageError(
      `--zone goes with one MESH, and ${files.length} are given. Price the part with its zones by itself.`,
    )
  }
  if (given.length > ZONES_MOST) {
    throw new UsageError(`--zone is given ${given.length} times; ${ZONES_MOST} is the most.`)
  }
  return given.map(zoneOf)
}

/**
 * `FILE=PCT`, or `FILE` alone. What stands behind the last `=` is the infill unless it ends a
 * file's name.
 */
function zoneOf(given: string): ZoneOption {
  const [, path = given, pct = null] = /^(.*)=([^=]*)$/.exec(given) ?? []
  if (pct === null || /\.(stl|obj|3mf)$/i.test(pct)) {
    if (given === '') throw new UsageError('--zone needs a mesh file; see --help.')
    return { file: given, path: given, infillPct: ZONE_PCT_DEFAULT }
  }
  if (path === '') throw new UsageError(`--zone is “${given}”; it needs a mesh file before the =.`)
  const { min, max } = ZONE_PCT_LIMITS
  const infillPct = Number(pct)
  if (pct.trim() !== '' && isWithin(ZONE_PCT_LIMITS, infillPct)) {
    return { file: path, path, infillPct }
  }
  throw new UsageError(
    `--zone is “${given}”; its infill must be a number from ${min} to ${max}, as in ${path}=40.`,
  )
}

/** A unit as given, millimetres unless it is. Throws UsageError. */
export function unitOf(given: string | undefined): LengthUnit {
  if (given === undefined) return 'millimetre'
  const unit = LENGTH_UNITS.find((known) => known === given)
  if (unit) return unit
  throw new UsageError(`--unit is “${given}”; it must be one of ${LENGTH_UNITS.join(', ')}.`)
}

function currencyOf(given: string | undefined, locale: string): string {
  if (given === undefined) return currencyForLocale(locale)
  const currency = allCurrencies().find((code) => code === given.toUpperCase())
  if (currency !== undefined) return currency
  throw new UsageError(
    `--currency is “${given}”; it must be a code of ISO 4217, three letters such as EUR or KRW.`,
  )
}
