import type { Census } from '../core/model/census.ts'
import type { Material, PartFigures, Prices, Printer } from '../core/model/figures.ts'
import { laidRecipe } from '../core/figures/laidRecipe.ts'
import { partFigures } from '../core/figures/part.ts'
import { carryFindings } from '../core/formats/carryFindings.ts'
import { readMesh } from '../core/formats/read.ts'
import { countLayers } from '../core/census/countLayers.ts'
import { inspectMesh } from '../core/mesh/inspect.ts'
import { orientMesh } from '../core/mesh/orient.ts'
import { outwardMesh } from '../core/mesh/outwardMesh.ts'
import { placeMesh } from '../core/mesh/pose.ts'
import { takeApart } from '../core/mesh/takeApart.ts'
import type { LengthUnit, Mesh, ReadMesh } from '../core/model/mesh.ts'
import type { Problem } from '../core/model/problem.ts'
import { PreweighError } from '../core/model/problem.ts'
import type { Pose, Recipe } from '../core/model/settings.ts'
import { unitToMm } from '../core/model/units.ts'
import { reportPart } from './report.ts'
import type { FailedPart, PricedPart, ZoneReport } from './report.ts'

export interface ZoneFile {
  readonly bytes: Uint8Array
  readonly name: string
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
  /** Meshes in the same axes and unit whose insides get their infill; where two overlap, the later one holds. */
  readonly zones: readonly ZoneFile[]
}

/** A priced mesh with what further figures are made from. */
export interface PricedMesh {
  readonly report: PricedPart
  readonly census: Census
  readonly figures: PartFigures
  /** Facing outwards, as drawn; `scaleToMm` makes its lengths mm. */
  readonly drawn: Mesh
  readonly scaleToMm: number
  /** As it lies on the bed, mm. */
  readonly placed: Mesh
}

/** Prices one piece of the mesh in `bytes`; `file` is its name in the report. Throws PreweighError. */
export function priceMesh(
  bytes: Uint8Array,
  name: string,
  file: string,
  settings: MeshSettings,
  onProgress: (fraction: number) => void,
): PricedMesh {
  const read = readMesh(bytes, name)
  return carryFindings(read, name, () => priceRead(read, file, settings, onProgress))
}

function priceRead(
  read: ReadMesh,
  file: string,
  settings: MeshSettings,
  onProgress: (fraction: number) => void,
): PricedMesh {
  const { pose, material, printer, prices } = settings
  const unit = settings.unitOf(read.unit)
  const scaleToMm = unitToMm(unit)
  const apart = takeApart(read.mesh)
  const { keepsHairs } = settings
  const drawn = outwardMesh(read.mesh, { scaleToMm, keepsHairs }, apart)
  const inspection = inspectMesh(read, drawn, unit, apart, keepsHairs)
  const zones = settings.zones.map(({ bytes, name }) => orientMesh(readMesh(bytes, name).mesh))
  const recipe = laidRecipe(settings, printer)
  const census = countLayers({ part: drawn, zones }, scaleToMm, pose, recipe, { onProgress })
  const placed = placeMesh(drawn, scaleToMm, pose)
  const figures = partFigures(census, recipe, material, printer, prices)
  const plain = reportPart(file, read.format, inspection, census, figures, recipe, prices.currency)
  const report =
    settings.zones.length === 0
      ? plain
      : { ...plain, zones: settings.zones.map((zone, i) => reportZone(zone, census.zones[i])) }
  return { report, census, figures, drawn, scaleToMm, placed }
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
