import { MATERIALS } from '../core/data/materials.ts'
import { PRINTER_DEFAULT } from '../core/data/printers.ts'
import type { Material, Printer } from '../core/model/figures.ts'
import type { LengthUnit } from '../core/model/mesh.ts'
import { parseFlags, unitOf } from './options.ts'
import { isJson, materialFrom, printerFrom } from './settings.ts'
import { UsageError } from './usage.ts'

/** A toolpath to read. */
export interface ToolpathOptions {
  readonly toolpath: string
  readonly material: Material
  /** Whether its diameter was given; otherwise it is read off the moves. */
  readonly knowsDiameter: boolean
  /** How it moves where the file does not say. */
  readonly printer: Printer
  /** Meshes that it may print. */
  readonly meshes: readonly string[]
  /** Of those that state none. */
  readonly unit: LengthUnit
  readonly json: boolean
}

/**
 * Null when no toolpath is asked for, or help. Throws UsageError: a toolpath says itself how it was
 * made.
 */
export function parseToolpathOptions(args: readonly string[]): ToolpathOptions | null {
  const { values, positionals } = parseFlags(args)
  const { toolpath, json, material, printer, unit, help, ...others } = values
  if (toolpath === undefined || help === true) return null
  if (toolpath === '') throw new UsageError('--toolpath needs a file; see --help.')
  const [other] = Object.keys(others)
  if (other !== undefined) {
    throw new UsageError(
      `--toolpath reads from the file how it was made; --${other} cannot be given with it.`,
    )
  }
  return {
    toolpath,
    material: materialFrom(material ?? 'pla', MATERIALS),
    knowsDiameter: material !== undefined && isJson(material) && material.includes('diameterMm'),
    printer: printer === undefined ? PRINTER_DEFAULT : printerFrom(printer),
    meshes: positionals,
    unit: unitOf(unit),
    json: json === true,
  }
}
