import type { BoreMark } from '../../core/model/joints.ts'
import type { Bounds, LengthUnit, Mesh, MeshFormat, Vec3 } from '../../core/model/mesh.ts'
import type { Census } from '../../core/model/census.ts'
import type { GeometrySettings, Pose } from '../../core/model/settings.ts'
import type { Inspection } from '../../core/mesh/inspect.ts'
import type { MeshSource, Rough } from './fileAsks.ts'
import type { PartLook } from '../../core/drawing/lookAtPart.ts'
import type { PartMoments } from '../../core/aircraft/balance/partMoments.ts'
import type { PlateOutline } from '../../core/aircraft/twin/outline.ts'
import type { SectionAxis } from '../../core/census/section/types.ts'
import type { Sheet, View } from '../../core/drawing/types.ts'
import type { SectionsAsk, StiffPartAsk } from '../../core/stiffness/part/stiffPart.ts'

export interface PartRead extends Inspection {
  readonly format: MeshFormat
  /** 96 × 96 pixels, RGBA, transparent ground; null until drawn. */
  readonly thumbnail: Thumbnail | null
}

export interface Thumbnail {
  readonly sizePx: number
  readonly rgba: Uint8ClampedArray
}

/**
 * Measures a mesh (`wantRead`) and counts its layers, of a tall part first a few (`wantCoarse`).
 */
export interface AnalyseAsk {
  readonly kind: 'analyse'
  readonly source: MeshSource
  /** Drawn in the part's own place and unit; the infill rooms inside them are counted apart. */
  readonly zones: readonly MeshSource[]
  readonly unit: LengthUnit
  readonly pose: Pose
  readonly geometry: GeometrySettings
  readonly wantRead: boolean
  readonly wantCoarse: boolean
  /** All layers, however long it takes. */
  readonly countsFully?: boolean
}

/**
 * What an analysis tells on its way, in this order; `progress` comes many times, `coarse` only for
 * a tall part.
 */
export type AnalyseEvent =
  | { readonly kind: 'rough'; readonly rough: Rough }
  | { readonly kind: 'read'; readonly read: PartRead }
  /** From about every 8th layer; its figures' ranges are wider by what that may miss. */
  | { readonly kind: 'coarse'; readonly census: Census }
  | { readonly kind: 'progress'; readonly fraction: number }

export interface AnalyseAnswer {
  readonly census: Census
}

/** The mesh in mm, turned into its pose, its lowest point at height 0. */
export interface MeshAsk {
  readonly kind: 'mesh'
  readonly source: MeshSource
  readonly unit: LengthUnit
  readonly pose: Pose
}

/** Where a point of the drawing lies on the bed: turned into the pose, then moved by `originMm`. */
export interface PlacedMesh extends Mesh {
  /** Where the drawing's origin lies on the bed. */
  readonly originMm: Vec3
}

/** What balance and the carbon twin need of a mesh; nothing a page draws at once. */
export interface ShapeAsk {
  readonly kind: 'shape'
  readonly source: MeshSource
  readonly unit: LengthUnit
  readonly pose: Pose
}

export interface PartShape {
  /** In the axes the part was drawn in, mm. */
  readonly moments: PartMoments
  /** As it lies in its pose; null where a cut half-way up meets nothing. */
  readonly outline: PlateOutline | null
  /** Its round bores, in the axes the part was drawn in, mm. */
  readonly bores: readonly BoreMark[]
  /** The box it fills, in the same axes, mm. */
  readonly boxMm: Bounds
}

/** The ways a part can lie, best first. */
export interface PosesAsk {
  readonly kind: 'poses'
  readonly source: MeshSource
  readonly unit: LengthUnit
  readonly supportAngleDeg: number
}

/** One part in lines as it lies on the bed, with its holes, zones and what hangs over. */
export interface LookAsk {
  readonly kind: 'look'
  readonly source: MeshSource
  readonly zones: readonly MeshSource[]
  readonly unit: LengthUnit
  readonly pose: Pose
  readonly view: View
  readonly sheet: Sheet
  readonly supportAngleDeg: number
  /** Points of the drawing to find on the sheet, mm as drawn. */
  readonly pointsMm: readonly Vec3[]
}

export interface LookAnswer extends PartLook {
  /** Where each of the points landed, px. */
  readonly points: readonly (readonly [x: number, y: number])[]
}

/** One part cut by a plane. */
export interface CutAsk {
  readonly kind: 'cut'
  readonly source: MeshSource
  readonly zones: readonly MeshSource[]
  readonly unit: LengthUnit
  readonly pose: Pose
  readonly geometry: GeometrySettings
  readonly axis: SectionAxis
  /** 0–1 of the part's extent on the axis. */
  readonly share: number
}

/** How one part gives, breaks and rings under a load. */
export interface StiffAsk extends StiffPartAsk {
  readonly kind: 'stiff'
  readonly source: MeshSource
  readonly zones: readonly MeshSource[]
  readonly unit: LengthUnit
}

/** One part as a beam, whatever its infill, plastic and load. */
export interface BeamAsk extends SectionsAsk {
  readonly kind: 'sections'
  readonly source: MeshSource
  readonly zones: readonly MeshSource[]
  readonly unit: LengthUnit
}

/** Share of the way, 0–1. */
export interface StiffEvent {
  readonly kind: 'progress'
  readonly fraction: number
}
