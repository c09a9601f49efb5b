import { formatNumber } from '../../words/format.ts'
import type { Bounds, LengthUnit } from '../../model/mesh.ts'
import { UNIT_PLURAL, unitToMm } from '../../model/units.ts'
import type { Hole } from './findHoles.ts'
import { findPatterns, type FoundPattern } from './patterns.ts'

export interface UnitSuggestion {
  readonly unit: LengthUnit
  /** Whole sentences for the builder, with the numbers that speak for it. */
  readonly reason: string
  /** False where size alone speaks, and fits the present unit too: a question and no more. */
  readonly sure: boolean
  /** Another unit that fits as well; left out where there is none. */
  readonly also?: LengthUnit
}

/**
 * No printed airframe part is shorter than this along its longest side, or longer than the other
 * (common practice, no source).
 */
const SHORTEST_MM = 2
const LONGEST_MM = 1000
/**
 * Few printed parts are shorter than this: possible, and odd enough to ask (common practice, no
 * source).
 */
const ODD_MM = 4
/** Where most parts lie (common practice, no source). */
const USUAL_MM = [10, 350] as const
/** Nothing can be screwed, pinned or threaded through less, and a nozzle hardly prints it. mm */
const LEAST_HOLE_MM = 0.8
/** How readily a unit is believed without other evidence (common practice, no source). */
const UNITS: readonly { readonly unit: LengthUnit; readonly prior: number }[] = [
  { unit: 'millimetre', prior: 2 },
  { unit: 'inch', prior: 1 },
  { unit: 'metre', prior: 0.5 },
  { unit: 'centimetre', prior: 0.25 },
  { unit: 'micron', prior: 0 },
]
/** A unit must be this much likelier than the present one. */
const CLEARLY = 1.5

/**
 * Clearance holes of ISO 273, fine and medium, mm. Printed parts use the coarse ones less, and with
 * them nearly every diameter would fit some screw.
 */
const SCREWS: readonly (readonly [name: string, fine: number, medium: number])[] = [
  ['M2', 2.2, 2.4],
  ['M2.5', 2.7, 2.9],
  ['M3', 3.2, 3.4],
  ['M4', 4.3, 4.5],
  ['M5', 5.3, 5.5],
]
const SCREW_FIT_MM = 0.04
/**
 * Clearance drills of inch screws, close and free, in inches. From memory (usual tap and clearance
 * drill charts), so they speak for a unit and decide nothing; asked only of parts taken in inches
 * or millimetres, where such screws are used.
 */
const INCH_SCREWS: readonly (readonly [name: string, close: number, free: number])[] = [
  ['#4', 0.116, 0.1285],
  ['#6', 0.144, 0.1495],
  ['#8', 0.1695, 0.177],
  ['#10', 0.196, 0.201],
  ['¼ in', 0.257, 0.266],
]
/**
 * Drawn in inches, a part of this length reads as 5 to 10 mm: as likely as not where it has no
 * holes to tell by (common practice, no source).
 */
const EITHER_MM = [120, 250] as const
/**
 * A plain piece shorter than this that is no thicker than a layer or two, the thickest common ones
 * of 0.3 mm, is nearly nothing to hold or print: 27 mg of PLA at most. Spacers, caps and feet as
 * short are higher, washers as thin are wider and have a hole (common practice, no source).
 */
const SCRAP_MM = { longest: 6, thickness: 0.6 }

/**
 * The unit a part was more likely drawn in than `now`, from its size and its holes; null where
 * `now` is as good as any. For files that state no unit. It only suggests: nothing may be rescaled
 * without being asked.
 *
 * @param boundsMm of the part taken in `now`.
 * @param holes in the file's own numbers.
 */
export function suggestUnit(
  boundsMm: Bounds,
  holes: readonly Hole[],
  now: LengthUnit,
): UnitSuggestion | null {
  const sides = [0, 1, 2].map((k) => (boundsMm.max[k]! - boundsMm.min[k]!) / unitToMm(now))
  const longest = Math.max(...sides)
  if (!(longest > 0) || !Number.isFinite(longest)) return null
  if (now === 'millimetre' && holes.length === 0) {
    if (isScrap(sides)) {
      return { unit: 'inch', also: 'centimetre', reason: scrapReason(sides), sure: false }
    }
    if (couldBeInches(longest)) return { unit: 'inch', reason: eitherReason(sides), sure: false }
  }
  const all = UNITS.map(({ unit, prior }) => weigh(unit, prior, longest, holes))
  const present = all.find((each) => each.unit === now)
  const best = all.reduce((a, b) => (b.score > a.score ? b : a))
  if (best.unit === now || best.score === -Infinity) return null
  const gain = best.score - (present?.score ?? 0)
  // A size that is possible as it stands is doubted only where it is odd or the holes speak for the
  // other unit.
  const possible = present === undefined || present.score > -Infinity
  const odd = longest * unitToMm(now) < ODD_MM
  if (possible && (gain < CLEARLY || (best.fits === 0 && !odd))) return null
  const also = all.find((each) => each.unit !== now && each !== best && fitsAsWell(each, holes))
  return {
    unit: best.unit,
    reason: [reasonFor(best, sides, now, holes), ...alsoReason(also, holes)].join(' '),
    sure: true,
    ...(also === undefined ? {} : { also: also.unit }),
  }
}

/** Shorter ones are doubted by their length. */
function isScrap(sides: readonly number[]): boolean {
  const longest = Math.max(...sides)
  return longest >= ODD_MM && longest < SCRAP_MM.longest && Math.min(...sides) <= SCRAP_MM.thickness
}

function couldBeInches(longest: number): boolean {
  const mm = longest * unitToMm('inch')
  return mm >= EITHER_MM[0] && mm <= EITHER_MM[1]
}

/** Every hole passes a screw, by its size alone. */
function fitsAsWell({ screw, score, fits }: Weighed, holes: readonly Hole[]): boolean {
  return score > -Infinity && screw !== null && fits >= holes.length
}

interface Weighed {
  readonly unit: LengthUnit
  /** −Infinity where a part of that size cannot be. */
  readonly score: number
  readonly patterns: readonly FoundPattern[]
  /** Holes that fit a screw: how many, of which diameter in the file's numbers, which screw. */
  readonly fits: number
  readonly screw: {
    readonly name: string
    readonly diameter: number
    readonly count: number
  } | null
}

function weigh(unit: LengthUnit, prior: number, longest: number, holes: readonly Hole[]): Weighed {
  const mm = unitToMm(unit)
  const size = longest * mm
  if (size < SHORTEST_MM || size > LONGEST_MM) {
    return { unit, score: -Infinity, patterns: [], fits: 0, screw: null }
  }
  const usual = size >= USUAL_MM[0] && size <= USUAL_MM[1] ? 1 : 0
  const patterns = findPatterns(holes, mm)
  const fitting = holes.flatMap(({ diameter }) => {
    const name = screwFor(diameter * mm, unit)
    return name === null ? [] : [{ name, diameter }]
  })
  const tooSmall = holes.filter(({ diameter }) => diameter * mm < LEAST_HOLE_MM).length
  const share = holes.length === 0 ? 0 : fitting.length / holes.length
  const impossible = holes.length === 0 ? 0 : tooSmall / holes.length
  const odd = size < ODD_MM ? 3 : 0
  const score = prior + usual - odd + (patterns.length > 0 ? 4 : 0) + 2 * share - 3 * impossible
  return {
    unit,
    score,
    patterns,
    fits: fitting.length + patterns.length,
    screw: commonest(fitting),
  }
}

function screwFor(mm: number, unit: LengthUnit): string | null {
  const inches = unit === 'inch' || unit === 'millimetre' ? INCH_SCREWS : []
  // Of a 4.5 mm hole drawn in inches a #8 is likelier than an M4.
  const drilled = inches.map(([name, close, free]) => [name, close * 25.4, free * 25.4] as const)
  const known = unit === 'inch' ? [...drilled, ...SCREWS] : [...SCREWS, ...drilled]
  const found = known.find(([, ...sizes]) =>
    sizes.some((each) => Math.abs(each - mm) <= SCREW_FIT_MM),
  )
  return found?.[0] ?? null
}

function commonest(fitting: readonly { name: string; diameter: number }[]): Weighed['screw'] {
  const counts = new Map<string, { name: string; diameter: number; count: number }>()
  for (const { name, diameter } of fitting) {
    const known = counts.get(name) ?? { name, diameter, count: 0 }
    counts.set(name, { ...known, count: known.count + 1 })
  }
  return [...counts.values()].reduce<Weighed['screw']>(
    (best, each) => (best === null || each.count > best.count ? each : best),
    null,
  )
}

function reasonFor(
  { unit, patterns, screw }: Weighed,
  sides: readonly number[],
  now: LengthUnit,
  holes: readonly Hole[],
): string {
  const sentences = [
    `In ${UNIT_PLURAL[now]} this part measures ${sizeIn(now, sides)}, ` +
      `in ${UNIT_PLURAL[unit]} ${sizeIn(unit, sides)}.`,
  ]
  const [pattern] = patterns
  if (pattern !== undefined) {
    const apart = formatNumber(pattern.aMm / unitToMm(unit), 'en', 4)
    const across = pattern.layout === 'cross' ? 'across the circle' : 'apart'
    sentences.push(
      `Four of its holes stand ${apart} ${across} in the file’s numbers: ` +
        `the ${pattern.name} mm pattern of a ${pattern.use}, drawn in ${UNIT_PLURAL[unit]}.`,
    )
  } else if (screw !== null) {
    const { name, diameter, count } = screw
    const mm = formatNumber(diameter * unitToMm(unit), 'en')
    sentences.push(
      `${count} of its ${holes.length} holes ${count === 1 ? 'is' : 'are'} ` +
        `${formatNumber(diameter, 'en', 4)} wide in the file’s numbers: ` +
        `${mm} mm, which passes ${screwWords(name)}, drawn in ${UNIT_PLURAL[unit]}.`,
    )
  }
  return sentences.join(' ')
}

function eitherReason(sides: readonly number[]): string {
  return (
    `In millimetres this part measures ${sizeIn('millimetre', sides)}, ` +
    `in inches ${sizeIn('inch', sides)}. ` +
    'It has no holes to tell by, and both are possible: check one side of it.'
  )
}

function scrapReason(sides: readonly number[]): string {
  return (
    `In millimetres this part measures ${sizeIn('millimetre', sides)}, ` +
    `in inches ${sizeIn('inch', sides)}, in centimetres ${sizeIn('centimetre', sides)}. ` +
    'Few parts so small and thin are printed, and it has no holes to tell by: ' +
    'check one side of it.'
  )
}

function sizeIn(unit: LengthUnit, sides: readonly number[]): string {
  return `${sides.map((side) => formatNumber(side * unitToMm(unit), 'en')).join(' × ')} mm`
}

function alsoReason(also: Weighed | undefined, holes: readonly Hole[]): readonly string[] {
  if (also === undefined || also.screw === null) return []
  const { name, diameter, count } = also.screw
  const mm = formatNumber(diameter * unitToMm(also.unit), 'en')
  return [
    `In ${UNIT_PLURAL[also.unit]} ${count} of ${holes.length} would be ${mm} mm and pass ` +
      `${screwWords(name)}: both fit, so check one side of it.`,
  ]
}

/** With where its clearance hole comes from. */
function screwWords(name: string): string {
  const isMetric = name.startsWith('M')
  return `${/^(M|#8)/.test(name) ? 'an' : 'a'} ${name} screw (${isMetric ? 'ISO 273' : 'usual drill charts'})`
}
