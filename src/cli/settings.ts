import * as v from 'valibot'
import {
  MATERIAL_LIMITS,
  PATTERN_NAMES,
  PRINTER_LIMITS,
  PRINTER_MORE_LIMITS,
  RECIPE_LIMITS,
} from '../core/data/limits.ts'
import type { Limits } from '../core/data/limits.ts'
import { MATERIALS } from '../core/data/materials.ts'
import { PRINTER_DEFAULT, PRINTER_FIELDS, PRINTERS } from '../core/data/printers.ts'
import { MORE_FIELDS } from '../core/data/printerMore.ts'
import { ROLES } from '../core/data/roles.ts'
import type { Material, Printer, PrinterMore } from '../core/model/figures.ts'
import { RECIPE_DEFAULTS } from '../core/model/settings.ts'
import type { Pattern, Recipe } from '../core/model/settings.ts'
import { UsageError } from './usage.ts'
import { whyUnread } from './whyUnread.ts'

const PATTERNS = Object.keys(PATTERN_NAMES) as Pattern[]

export function numberIn({ min, max, whole }: Limits) {
  const kind = whole ? 'a whole number' : 'a number'
  const message = (issue: { readonly input: unknown }): string =>
    `is ${JSON.stringify(issue.input)}; it must be ${kind} from ${min} to ${max}`
  return v.pipe(
    v.number(message),
    v.minValue(min, message),
    v.maxValue(max, message),
    v.check((value) => !whole || Number.isInteger(value), message),
  )
}

function oneOf<const T extends string>(options: readonly T[]) {
  return v.picklist(
    options,
    ({ input }) => `is ${JSON.stringify(input)}; it must be one of ${options.join(', ')}`,
  )
}

const RECIPE = v.partial(
  v.strictObject({
    layerMm: numberIn(RECIPE_LIMITS.layerMm),
    firstLayerMm: numberIn(RECIPE_LIMITS.firstLayerMm),
    lineMm: numberIn(RECIPE_LIMITS.lineMm),
    walls: numberIn(RECIPE_LIMITS.walls),
    topSkins: numberIn(RECIPE_LIMITS.topSkins),
    bottomSkins: numberIn(RECIPE_LIMITS.bottomSkins),
    infillPct: numberIn(RECIPE_LIMITS.infillPct),
    supportAngleDeg: numberIn(RECIPE_LIMITS.supportAngleDeg),
    brimMm: numberIn(RECIPE_LIMITS.brimMm),
    pattern: oneOf(PATTERNS),
    supports: v.boolean(({ input }) => `is ${JSON.stringify(input)}; it must be true or false`),
  }),
)

const MATERIAL = v.partial(
  v.strictObject({
    id: oneOf(MATERIALS.map(({ id }) => id)),
    densityGCm3: numberIn(MATERIAL_LIMITS.densityGCm3),
    pricePerKg: numberIn(MATERIAL_LIMITS.pricePerKg),
    diameterMm: numberIn(MATERIAL_LIMITS.diameterMm),
    flow: numberIn(MATERIAL_LIMITS.flow),
    nozzleC: numberIn(MATERIAL_LIMITS.nozzleC),
    bedC: numberIn(MATERIAL_LIMITS.bedC),
  }),
)

const PRINTER = v.partial(
  v.strictObject({
    id: oneOf(PRINTERS.map(({ id }) => id)),
    ...(Object.fromEntries(
      PRINTER_FIELDS.map(({ key }) => [key, numberIn(PRINTER_LIMITS[key])]),
    ) as Record<(typeof PRINTER_FIELDS)[number]['key'], ReturnType<typeof numberIn>>),
    ...(Object.fromEntries(
      MORE_FIELDS.map(({ key }) => [key, numberIn(PRINTER_MORE_LIMITS[key])]),
    ) as Record<keyof PrinterMore, ReturnType<typeof numberIn>>),
  }),
)

/**
 * Recipe from JSON text or a role's id. Without its own first layer it starts with the layer height
 * given.
 */
export function recipeFrom(text: string): Recipe {
  const role = Object.values(ROLES).find(({ id }) => id === text)
  if (role) return role.recipe
  const given = parse('--recipe', RECIPE, withoutZonePct(text))
  const firstLayerMm = given.firstLayerMm ?? given.layerMm ?? RECIPE_DEFAULTS.firstLayerMm
  return { ...RECIPE_DEFAULTS, ...defined(given), firstLayerMm }
}

/**
 * The recipe said it once, for the only zone there was; silently dropped it would be another part.
 */
function withoutZonePct(text: string): string {
  const json = parseJson('--recipe', text)
  if (typeof json === 'object' && json !== null && 'zonePct' in json) {
    throw new UsageError(
      `--recipe: zonePct is said with the zone now, as in --zone root.stl=${String(json.zonePct)}.`,
    )
  }
  return text
}

/** Material from an id or JSON; `materials` holds the choice, prices in the wanted currency. */
export function materialFrom(text: string, materials: readonly Material[]): Material {
  if (!isJson(text)) return byId('--material', text, materials)
  const { id, densityGCm3, pricePerKg, nozzleC, bedC, ...plain } = parse(
    '--material',
    MATERIAL,
    text,
  )
  const base = byId('--material', id ?? 'pla', materials)
  const typed = (value: number) => ({ value, mark: 'user', source: 'given to --material' }) as const
  return {
    ...base,
    ...defined(plain),
    ...(densityGCm3 === undefined ? {} : { densityGCm3: typed(densityGCm3), densityTyped: true }),
    ...(pricePerKg === undefined ? {} : { pricePerKg: typed(pricePerKg) }),
    ...(nozzleC === undefined ? {} : { nozzleC: typed(nozzleC) }),
    ...(bedC === undefined ? {} : { bedC: typed(bedC) }),
  }
}

/**
 * Printers of these classes, by their ids with commas between. Throws UsageError for one there is
 * not.
 */
export function printersFrom(text: string): readonly Printer[] {
  return text.split(',').map((given) => {
    const found = PRINTERS.find(({ id }) => id === given.trim())
    if (found !== undefined) return found
    const ids = PRINTERS.map(({ id }) => id).join(', ')
    throw new UsageError(
      `--printers: there is no “${given.trim()}”. Name some of ${ids}, with commas between.`,
    )
  })
}

/** Printer from an id or JSON. An acceleration alone is that of every kind of move. */
export function printerFrom(text: string): Printer {
  if (!isJson(text)) return byId('--printer', text, PRINTERS)
  const { id, ...given } = parse('--printer', PRINTER, text)
  const base = id === undefined ? PRINTER_DEFAULT : byId('--printer', id, PRINTERS)
  const { accelMmS2 } = given
  const every =
    accelMmS2 === undefined ? {} : { wallAccelMmS2: accelMmS2, travelAccelMmS2: accelMmS2 }
  return { ...base, ...every, ...defined(given) }
}

/**
 * What a file named in an option holds, which must be JSON; `or` says what else would have done.
 * Throws UsageError.
 */
export function textOf(
  option: string,
  or: string,
  path: string,
  readText: (path: string) => string,
): string {
  let text: string
  try {
    text = readText(path)
  } catch (error) {
    throw new UsageError(
      `${option}: “${path}” is neither ${or}, nor a file: ${whyUnread(error, path)}.`,
    )
  }
  if (text.trim() === '') throw new UsageError(`${option}: the file “${path}” is empty.`)
  if (!isJson(text)) throw new UsageError(`${option}: the file “${path}” does not hold JSON.`)
  return text
}

export function isJson(text: string): boolean {
  return /^\s*[{["]/.test(text)
}

/** Throws UsageError naming the option, the key, what was given and what would do. */
export function parse<S extends v.GenericSchema>(
  option: string,
  schema: S,
  text: string,
  example = '{"layerMm": 0.2}',
): v.InferOutput<S> {
  const result = v.safeParse(schema, parseJson(option, text))
  if (result.success) return result.output
  const problems = result.issues.map((issue) => {
    const key = v.getDotPath(issue)
    if (key === null || Array.isArray(parseJson(option, text)))
      return `it must be a JSON object such as ${example}`
    if (issue.type === 'strict_object') return `“${key}” is not a key it knows`
    return `${key} ${issue.message}`
  })
  throw new UsageError(`${option}: ${problems.join('; ')}. See --help for all keys.`)
}

export function parseJson(option: string, text: string): unknown {
  try {
    return JSON.parse(text) as unknown
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error)
    throw new UsageError(`${option}: this is not JSON (${reason}).`)
  }
}

function byId<T extends { readonly id: string }>(
  option: string,
  wanted: string,
  items: readonly T[],
): T {
  const found = items.find(({ id }) => id === wanted)
  if (found) return found
  const known = items.map(({ id }) => id).join(', ')
  throw new UsageError(`${option}: there is no “${wanted}”. Choose one of ${known}, or give JSON.`)
}

/** The keys that were given; an undefined one must not wipe out its default. */
type Defined<T> = { [K in keyof T]?: Exclude<T[K], undefined> }

function defined<T extends object>(given: T): Defined<T> {
  return Object.fromEntries(
    Object.entries(given).filter(([, value]) => value !== undefined),
  ) as Defined<T>
}
