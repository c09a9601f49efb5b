import type { Census } from '../core/model/census.ts'
import { censusFindings } from '../core/figures/censusFindings.ts'
import type { PartFigures, PlasticVolumes, Range } from '../core/model/figures.ts'
import type { Bounds, Finding, MeshFormat } from '../core/model/mesh.ts'
import type { UnitSuggestion } from '../core/mesh/holes/suggestUnit.ts'
import type { Inspection, PlateSummary } from '../core/mesh/inspect.ts'
import type { HabitsReport } from './habits.ts'
import type { Recipe } from '../core/model/settings.ts'

/**
 * What `--json` prints. Field names and meanings are stable; lengths mm, masses g, times s, money
 * in `currency`.
 */
export interface PriceReport {
  readonly parts: readonly PartReport[]
  readonly total: TotalReport
  readonly habits: HabitsReport
}

export type PartReport = PricedPart | FailedPart

interface Outcome extends PlasticVolumes {
  /** Support and brim removed. */
  readonly massG: Range
  readonly filamentM: number
  readonly cost: Range & { readonly currency: string }
  readonly timeS: Range
}

/** One piece. */
export interface PricedPart extends Outcome {
  readonly file: string
  readonly format: MeshFormat
  readonly triangles: number
  readonly bodies: number
  readonly volumeMm3: number
  readonly areaMm2: number
  /** As drawn. */
  readonly boundsMm: Bounds
  readonly watertight: boolean
  /** Heaviest first. */
  readonly findings: readonly Finding[]
  /** The unit a file that states none was more likely drawn in; nothing was rescaled. */
  readonly unitHint?: UnitSuggestion
  /** What the file would be as parts of their own; they are priced together. */
  readonly plate?: PlateSummary
  readonly layers: number
  /** Whether only some of them were counted, for all take too long; `--full` counts all. */
  readonly coarse: boolean
  /** Without plastic; ways to support and brim left out. */
  readonly travelM: number
  readonly retracts: number
  /** Left out where there is none. */
  readonly zones?: readonly ZoneReport[]
}

export interface ZoneReport {
  readonly file: string
  readonly infillPct: number
  /** Infill rooms that lie in it and in no later zone; 0 where it changes nothing. */
  readonly roomMm3: number
}

export interface FailedPart {
  readonly file: string
  readonly error: {
    readonly code: string
    readonly message: string
    /** What the reader had found before the file was refused. */
    readonly findings?: readonly Finding[]
  }
}

/** All pieces of all parts that could be priced. */
export interface TotalReport extends Outcome {
  /** Of a frame those too that only the scale knows, which count in mass alone. */
  readonly quantity: number
  readonly priced: number
  readonly failed: number
  /** How many of the priced were counted coarsely. */
  readonly coarse: number
}

export function isFailed(part: PartReport): part is FailedPart {
  return 'error' in part
}

export function reportPart(
  file: string,
  format: MeshFormat,
  { measure, unitHint, plate }: Inspection,
  census: Census,
  figures: PartFigures,
  recipe: Recipe,
  currency: string,
): PricedPart {
  const { triangles, bodies, volumeMm3, areaMm2, boundsMm, watertight } = measure
  return {
    file,
    format,
    triangles,
    bodies,
    volumeMm3,
    areaMm2,
    boundsMm,
    watertight,
    findings: censusFindings(measure.findings, figures, census, recipe),
    ...(unitHint === undefined ? {} : { unitHint }),
    ...(plate === undefined ? {} : { plate }),
    layers: census.layers.count,
    coarse: census.coarseMm3 > 0,
    depositMm3: figures.depositMm3,
    wallMm3: figures.wallMm3,
    gapMm3: figures.gapMm3,
    skinMm3: figures.skinMm3,
    strandMm3: figures.strandMm3,
    infillMm3: figures.infillMm3,
    supportMm3: figures.supportMm3,
    brimMm3: figures.brimMm3,
    massG: figures.massG,
    filamentM: figures.filamentM.mid,
    cost: { ...endsOf(figures.cost), currency },
    timeS: figures.timeS,
    travelM: figures.travel?.travelM ?? 0,
    retracts: Math.round(figures.travel?.retracts ?? 0),
  }
}

/**
 * Sums with `quantity` pieces of each part; ranges end to end, as for one spool and one printer.
 */
export function reportTotal(
  parts: readonly PartReport[],
  quantity: number,
  currency: string,
): TotalReport {
  const priced = parts.filter((part): part is PricedPart => !isFailed(part))
  const failed = parts.length - priced.length
  const coarse = priced.filter((part) => part.coarse).length
  return { quantity, ...sumParts(priced, () => quantity, currency), failed, coarse }
}

/** Sums with the part's own number of `pieces`. */
function sumParts<P extends PricedPart>(
  priced: readonly P[],
  pieces: (part: P) => number,
  currency: string,
): Omit<TotalReport, 'quantity' | 'failed' | 'coarse'> {
  const sum = (value: (part: P) => number): number =>
    priced.reduce((total, part) => total + pieces(part) * value(part), 0)
  const sumRange = (range: (part: P) => Range): Range => ({
    low: sum((part) => range(part).low),
    mid: sum((part) => range(part).mid),
    high: sum((part) => range(part).high),
  })
  return {
    priced: priced.length,
    depositMm3: sum((part) => part.depositMm3),
    wallMm3: sum((part) => part.wallMm3),
    gapMm3: sum((part) => part.gapMm3),
    skinMm3: sum((part) => part.skinMm3),
    strandMm3: sum((part) => part.strandMm3),
    infillMm3: sum((part) => part.infillMm3),
    supportMm3: sum((part) => part.supportMm3),
    brimMm3: sum((part) => part.brimMm3),
    massG: sumRange((part) => part.massG),
    filamentM: sum((part) => part.filamentM),
    cost: { ...sumRange((part) => part.cost), currency },
    timeS: sumRange((part) => part.timeS),
  }
}

function endsOf({ low, mid, high }: Range): Range {
  return { low, mid, high }
}
