import { readFileSync } from 'node:fs'
import { listMeshFiles } from '../core/formats/archive.ts'
import type { MeshFile } from '../core/formats/archive.ts'
import type { LengthUnit } from '../core/model/mesh.ts'
import type { Problem } from '../core/model/problem.ts'
import { POSE_AS_DRAWN } from '../core/model/settings.ts'
import type { PriceOptions } from './options.ts'
import { failedPart, priceMesh } from './priceMesh.ts'
import type { ZoneFile } from './priceMesh.ts'
import type { PartReport } from './report.ts'

/** Reads and prices the file at `path`; `file` is its name in the report. Never throws. */
export function pricePath(
  file: string,
  path: string,
  options: PriceOptions,
  onProgress: (file: string, fraction: number) => void,
): readonly PartReport[] {
  let bytes: Uint8Array
  let zone: ZoneFile | null = null
  try {
    bytes = readFileSync(path)
    if (options.zone !== null) zone = { bytes: readFileSync(options.zone), name: options.zone }
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error)
    const message = `The file could not be read (${reason}). Check its path and that it may be read.`
    return [{ file, error: { code: 'unreadable', message } }]
  }
  return priceFile(bytes, file, options, zone, onProgress)
}

/** Prices every mesh in a file: one, or those of a ZIP. Never throws; what fails is reported as failed. */
function priceFile(
  bytes: Uint8Array,
  file: string,
  options: PriceOptions,
  zone: ZoneFile | null,
  onProgress: (file: string, fraction: number) => void,
): readonly PartReport[] {
  let meshes: readonly MeshFile[]
  try {
    meshes = listMeshFiles(bytes, file)
  } catch (error) {
    return [failedPart(file, error)]
  }
  if (zone && meshes.length !== 1) {
    return [failedPart(file, zoneOfMany(file, meshes.length))]
  }
  const settings = {
    ...options,
    zone,
    pose: POSE_AS_DRAWN,
    unitOf: (stated: LengthUnit | null) => stated ?? options.unit,
  }
  return meshes.map((mesh): PartReport => {
    const name = mesh.name === file ? file : `${file}/${mesh.name}`
    if (mesh.problem) return failedPart(name, mesh.problem)
    try {
      const tell = (fraction: number): void => onProgress(name, fraction)
      return priceMesh(mesh.bytes, mesh.name, name, settings, tell).report
    } catch (error) {
      return failedPart(name, error)
    }
  })
}

function zoneOfMany(file: string, count: number): Problem {
  return {
    code: 'bad-archive',
    message: `--zone goes with one mesh, and “${file}” holds ${count}.`,
    advice: 'Unpack it and price the part with the zone by itself.',
  }
}
