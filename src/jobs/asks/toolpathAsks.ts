import type { LengthUnit } from '../../core/model/mesh.ts'
import type { MeshSource } from './fileAsks.ts'
import type { Pose } from '../../core/model/settings.ts'
import type { ToolpathFigures } from '../../core/model/toolpath.ts'
import type { ToolpathSettings } from '../../core/toolpath/readToolpath.ts'

/**
 * Reads a printer's toolpath piece by piece, packed with gzip or not, and finds the part it prints.
 */
export interface ToolpathAsk {
  readonly kind: 'toolpath'
  readonly name: string
  readonly blob: Blob
  readonly settings: ToolpathSettings
  readonly parts: readonly ToolpathPart[]
}

/** A part that a toolpath may print. */
export interface ToolpathPart {
  /** Part id. */
  readonly item: string
  readonly source: MeshSource
  readonly unit: LengthUnit
}

/** How much of the file is read, 0–1. */
export interface ToolpathEvent {
  readonly kind: 'progress'
  readonly fraction: number
}

export interface ToolpathAnswer {
  readonly figures: ToolpathFigures
  /** Null where it prints none of the parts alone. */
  readonly match: ToolpathMatch | null
}

export interface ToolpathMatch {
  /** Part id. */
  readonly item: string
  readonly pose: Pose
  /** How far height and plan are off at most. mm */
  readonly misfitMm: number
  /** Ids of others that fit as well. */
  readonly alike: readonly string[]
}
