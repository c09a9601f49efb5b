import { listMeshFiles } from '../core/formats/archive.ts'
import type { MeshFile } from '../core/formats/archive.ts'
import type { LengthUnit } from '../core/model/mesh.ts'
import type { Problem } from '../core/model/problem.ts'
import { POSE_AS_DRAWN } from '../core/model/settings.ts'
import type { PriceOptions } from './options.ts'
import { failedPart, priceMesh } from './priceMesh.ts'
import type { ZoneFile } from './priceMesh.ts'
import type { PartReport } from './report.ts'
import { readBytes } from './whyUnread.ts'
import { workBudget } from './workBudget.ts'

/** Reads and prices the file at `path`; `file` is its name in the report. Never throws. */
export function pricePath(
  file: string,
  path: string,
  options: PriceOptions,
  onProgress: (file: string, fraction: number) => void,
): readonly PartReport[] {
  let bytes: Uint8Array
  let zones: readonly ZoneFile[]
  try {
    bytes = readBytes(path, 'The file')
    zones = options.zones.map(({ file: name, path: at, infillPct }): ZoneFile => ({
      bytes: readBytes(at, `The zone “${name}”`),
      name,
      infillPct,
    }))
  } catch (error) {
    return [failedPart(file, error)]
  }
  return priceFile(bytes, file, options, zones, onProgress)
}

/**
 * Prices every mesh in a file: one, or those of a ZIP. Never throws; what fails is reported as
 * failed.
 */
function priceFile(
  bytes: Uint8Array,
  file: string,
  options: PriceOptions,
  zones: readonly ZoneFile[],
  onProgress: (file: string, fraction: number) => void,
): readonly PartReport[] {
  let meshes: readonly MeshFile[]
  try {
    meshes = listMeshFiles(bytes, file)
  } catch (error) {
    return [failedPart(file, error)]
  }
  if (zones.length > 0 && meshes.length !== 1) {
    return [failedPart(file, zoneOfMany(file, meshes.length))]
  }
  const settings = {
    ...options,
    zones,
    pose: POSE_AS_DRAWN,
    unitOf: (stated: LengthUnit | null) => stated ?? options.unit,
  }
  const budgeted = () => (options.full ? settings : { ...settings, budget: workBudget() })
  return meshes.map((mesh): PartReport => {
    const name = mesh.name === file ? file : `${file}/${mesh.name}`
    if (mesh.problem) return failedPart(name, mesh.problem)
    try {
      const tell = (fraction: number): void => onProgress(name, fraction)
      return priceMesh(mesh, name, budgeted(), tell).report
    } catch (error) {
      return failedPart(name, error)
    }
  })
}

function zoneOfMany(file: string, count: number): Problem {
  return {
    code: 'bad-archive',
    message: `--zone goes with one mesh, and “${file}” holds ${count}.`,
    advice: 'Unpack it and price the part with its zones by itself.',
  }
}
