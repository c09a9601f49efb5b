import type { Budget } from '../core/census/budget.ts'
import type { Census } from '../core/model/census.ts'
import type { LengthUnit } from '../core/model/mesh.ts'
import type { Material, PartFigures, Prices, Printer } from '../core/model/figures.ts'
import { laidRecipe } from '../core/figures/laidRecipe.ts'
import { partFigures } from '../core/figures/part.ts'
import type { Problem } from '../core/model/problem.ts'
import { PreweighError } from '../core/model/problem.ts'
import type { Pose, Recipe } from '../core/model/settings.ts'
import { weighPart, type NamedBytes, type WeighedPart } from '../core/weighPart.ts'
import { reportPart } from './report.ts'
import type { FailedPart, PricedPart, ZoneReport } from './report.ts'

/** A zone's mesh, and the infill inside it. */
export interface ZoneFile extends NamedBytes {
  /** 0–100. */
  readonly infillPct: number
}

/** How one mesh is taken and printed. */
export interface MeshSettings {
  /** From the unit the file states, null where it states none. */
  readonly unitOf: (stated: LengthUnit | null) => LengthUnit
  readonly pose: Pose
  readonly recipe: Recipe
  readonly material: Material
  readonly printer: Printer
  readonly prices: Prices
  /** Loose bodies thinner than a line stay in. */
  readonly keepsHairs: boolean
  /** Left out to count all layers, however long that takes. */
  readonly budget?: Budget
  /**
   * Meshes in the same axes and unit whose insides get their infill; where two overlap, the later
   * one holds.
   */
  readonly zones: readonly ZoneFile[]
}

/** A priced mesh with what further figures are made from. */
export interface PricedMesh {
  readonly report: PricedPart
  readonly weighed: WeighedPart
  readonly figures: PartFigures
}

/**
 * Prices one piece of the mesh in `file`; `title` is its name in the report. Throws PreweighError.
 */
export function priceMesh(
  file: NamedBytes,
  title: string,
  settings: MeshSettings,
  onProgress: (fraction: number) => void,
): PricedMesh {
  const { material, printer, prices, zones, budget } = settings
  const recipe = laidRecipe(settings, printer)
  const weighed = weighPart(
    file,
    zones,
    { ...settings, geometry: recipe },
    {
      onProgress,
      ...(budget === undefined ? {} : { budget }),
    },
  )
  const { read, inspection, census } = weighed
  const figures = partFigures(census, recipe, material, printer, prices)
  const { currency } = prices
  const plain = reportPart(title, read.format, inspection, census, figures, recipe, currency)
  const report =
    zones.length === 0
      ? plain
      : { ...plain, zones: zones.map((zone, i) => reportZone(zone, census.zones[i])) }
  return { report, weighed, figures }
}

function reportZone({ name, infillPct }: ZoneFile, zone: Census | null | undefined): ZoneReport {
  return { file: name, infillPct, roomMm3: zone?.roomMm3 ?? 0 }
}

/** What `reason`, thrown or told, says of a file that could not be priced. */
export function failedPart(file: string, reason: unknown): FailedPart {
  const problem = reason instanceof PreweighError ? reason.problem : reason
  if (isProblem(problem)) {
    const { code, message, advice, findings } = problem
    const error = { code, message: `${message} ${advice}` }
    return { file, error: findings === undefined ? error : { ...error, findings } }
  }
  const message = reason instanceof Error ? reason.message : String(reason)
  return { file, error: { code: 'crashed', message: `The work on it broke down: ${message}.` } }
}

function isProblem(value: unknown): value is Problem {
  return typeof value === 'object' && value !== null && 'code' in value && 'advice' in value
}
