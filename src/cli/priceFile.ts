import { readFileSync } from 'node:fs'
import { listMeshFiles } from '../core/formats/archive.ts'
import type { MeshFile } from '../core/formats/archive.ts'
import { readMesh } from '../core/formats/read.ts'
import { partFigures } from '../core/figures/part.ts'
import { inspectMesh } from '../core/geometry/inspect.ts'
import { orientMesh } from '../core/geometry/orient.ts'
import { placeMesh } from '../core/geometry/pose.ts'
import { refuseTooOpen } from '../core/geometry/refuseTooOpen.ts'
import { takeCensus } from '../core/geometry/takeCensus.ts'
import { PreweighError } from '../core/problem.ts'
import { POSE_AS_DRAWN } from '../core/settings.ts'
import { unitToMm } from '../core/units.ts'
import type { PriceOptions } from './options.ts'
import { reportPart } from './report.ts'
import type { FailedPart, PartReport, PricedPart } from './report.ts'

/** Reads and prices the file at `path`; `file` is its name in the report. Never throws. */
export function pricePath(
  file: string,
  path: string,
  options: PriceOptions,
  onProgress: (file: string, fraction: number) => void,
): readonly PartReport[] {
  let bytes: Uint8Array
  try {
    bytes = readFileSync(path)
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error)
    const message = `The file could not be read (${reason}). Check its path and that it may be read.`
    return [{ file, error: { code: 'unreadable', message } }]
  }
  return priceFile(bytes, file, options, onProgress)
}

/** Prices every mesh in a file: one, or those of a ZIP. Never throws; what fails is reported as failed. */
function priceFile(
  bytes: Uint8Array,
  file: string,
  options: PriceOptions,
  onProgress: (file: string, fraction: number) => void,
): readonly PartReport[] {
  let meshes: readonly MeshFile[]
  try {
    meshes = listMeshFiles(bytes, file)
  } catch (error) {
    return [failed(file, error)]
  }
  return meshes.map((mesh): PartReport => {
    const name = mesh.name === file ? file : `${file}/${mesh.name}`
    if (mesh.problem) return failed(name, mesh.problem)
    try {
      return priceMesh(mesh, name, options, (fraction) => onProgress(name, fraction))
    } catch (error) {
      return failed(name, error)
    }
  })
}

function priceMesh(
  { bytes, name }: MeshFile,
  file: string,
  options: PriceOptions,
  onProgress: (fraction: number) => void,
): PricedPart {
  const { recipe, material, printer, prices } = options
  const read = readMesh(bytes, name)
  const unit = read.unit ?? options.unit
  const outward = orientMesh(read.mesh)
  const { measure } = inspectMesh(read, outward, unit)
  const census = takeCensus(placeMesh(outward, unitToMm(unit), POSE_AS_DRAWN), recipe, onProgress)
  refuseTooOpen(census)
  const figures = partFigures(census, recipe, material, printer, prices)
  return reportPart(file, read.format, measure, census, figures, recipe, prices.currency)
}

function failed(file: string, reason: unknown): FailedPart {
  const problem = reason instanceof PreweighError ? reason.problem : reason
  if (isProblem(problem)) {
    return { file, error: { code: problem.code, message: `${problem.message} ${problem.advice}` } }
  }
  const message = reason instanceof Error ? reason.message : String(reason)
  return { file, error: { code: 'crashed', message: `The work on it broke down: ${message}.` } }
}

function isProblem(
  value: unknown,
): value is { readonly code: string; readonly message: string; readonly advice: string } {
  return typeof value === 'object' && value !== null && 'code' in value && 'advice' in value
}
