import type { DrawnPlace } from '../core/model/aircraft.ts'
import type { PartMoments } from '../core/aircraft/balance/partMoments.ts'
import type { Census } from '../core/model/census.ts'
import type { JointOffer } from '../core/joints/offerJoints.ts'
import type { LineDrawing, Motion, Sheet, View } from '../core/drawing/types.ts'
import type { PartSection, SectionAxis } from '../core/census/section/types.ts'
import type { PartLook } from '../core/drawing/lookAtPart.ts'
import type { Inspection } from '../core/mesh/inspect.ts'
import type { PoseOption } from '../core/mesh/poseOptions.ts'
import type { LengthUnit, Mesh, MeshFormat, Vec3 } from '../core/model/mesh.ts'
import type { RunWay } from '../core/model/runs.ts'
import type { PlannedRun, RunPart, RunWorkshop } from '../core/runs/planRuns.ts'
import type { Unfit } from '../core/runs/types.ts'
import type { Problem } from '../core/model/problem.ts'
import type { GeometrySettings, Pose } from '../core/model/settings.ts'
import type { ToolpathFigures } from '../core/model/toolpath.ts'
import type { ToolpathSettings } from '../core/toolpath/readToolpath.ts'
import type { PlateOutline } from '../core/aircraft/twin/outline.ts'

/** A mesh file whose bytes are known: `hash` is their SHA-256, lower-case hex. The blob is read inside the worker. */
export interface MeshSource {
  readonly hash: string
  readonly name: string
  readonly blob: Blob
  /** Loose bodies of it thinner than a line stay in. */
  readonly keepsHairs?: boolean
}

/** Volume and area alone, known long before the layers are counted. */
export interface Rough {
  readonly volumeMm3: number
  readonly areaMm2: number
}

export interface PartRead extends Inspection {
  readonly format: MeshFormat
  /** 96 × 96 pixels, RGBA, transparent ground; null until drawn. */
  readonly thumbnail: Thumbnail | null
}

export interface Thumbnail {
  readonly sizePx: number
  readonly rgba: Uint8ClampedArray
}

/** First look at a file: what it holds, each mesh hashed and roughly measured. */
export interface OpenAsk {
  readonly kind: 'open'
  readonly name: string
  readonly blob: Blob
}

/** One mesh of an opened file; an archive gives several. */
export type OpenedFile =
  | {
      readonly ok: true
      readonly source: MeshSource
      /** The unit the file states; null where it has none. */
      readonly unit: LengthUnit | null
      /** Measured with one file unit taken as one millimetre. */
      readonly raw: Rough
    }
  | { readonly ok: false; readonly name: string; readonly problem: Problem }

export type OpenAnswer =
  | { readonly kind: 'meshes'; readonly files: readonly OpenedFile[] }
  /** The file is one of our own project files. */
  | { readonly kind: 'project' }
  /** The file holds the moves of a print head: it is read by `ToolpathAsk`. */
  | { readonly kind: 'toolpath' }

/** Measures a mesh (`wantRead`) and counts its layers, of a tall part first a few (`wantCoarse`). */
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

/** What an analysis tells on its way, in this order; `progress` comes many times, `coarse` only for a tall part. */
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
}

/** Makes new mesh files: one a kind of part on a plate, or one without stray scraps. */
export interface SplitAsk {
  readonly kind: 'split'
  readonly source: MeshSource
  readonly unit: LengthUnit
  readonly how: 'parts' | 'clean'
}

export interface SplitAnswer {
  readonly pieces: readonly SplitPiece[]
  /** Triangles that went into none of them. */
  readonly leftOut: number
}

export interface SplitPiece {
  readonly source: MeshSource
  /** Measured with one file unit taken as one millimetre. */
  readonly raw: Rough
  /** How many such parts there are, mirrored ones included. */
  readonly count: number
  readonly mirrored: number
  /** Where the file puts each of them; left out where it does not say. */
  readonly places?: readonly DrawnPlace[]
  /** What the file calls it; left out where it does not. */
  readonly name?: string
}

/** The ways a part can lie, best first. */
export interface PosesAsk {
  readonly kind: 'poses'
  readonly source: MeshSource
  readonly unit: LengthUnit
  readonly supportAngleDeg: number
}

/** A view of the whole frame in lines. */
export interface DrawAsk {
  readonly kind: 'draw'
  readonly parts: readonly DrawPart[]
  readonly view: View
  readonly sheet: Sheet
  /** How far the pieces stand apart, 0–1. */
  readonly apart: number
  /** Along each side of a px: 1 while it turns, 2 to keep. */
  readonly samples: 1 | 2
}

export interface DrawPart {
  /** Part id. */
  readonly item: string
  readonly source: MeshSource
  readonly unit: LengthUnit
  /** Where each placed piece goes, from the mesh's own unit. */
  readonly motions: readonly Motion[]
  /** Pieces without a place. */
  readonly looseCount: number
}

/** What is drawn, and what could not be. */
export interface DrawAnswer {
  /** Null when there is nothing to draw. */
  readonly drawing: LineDrawing | null
  /** Ids of parts whose mesh could not be read. */
  readonly left: readonly string[]
  /** The pieces without a place, which lie in rows; null where all have one. */
  readonly loose: LooseRow | null
}

export interface LooseRow {
  /** Ids of their parts, each once. */
  readonly items: readonly string[]
  /** Left, top, right, bottom of all of them, px. */
  readonly boxPx: readonly [number, number, number, number]
}

/** Ways in which the parts of a frame could be joined. */
export interface OffersAsk {
  readonly kind: 'offers'
  readonly parts: readonly OffersPart[]
}

export interface OffersPart {
  readonly partId: string
  readonly source: MeshSource
  readonly unit: LengthUnit
  /** How many of it fly. */
  readonly pieces: number
}

export interface OffersAnswer {
  readonly offers: readonly JointOffer[]
  /** Ids of parts whose mesh could not be read. */
  readonly left: readonly string[]
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

/** A frame's pieces to be laid into print runs. */
export interface RunsAsk {
  readonly kind: 'runs'
  readonly parts: readonly RunsPart[]
  readonly workshop: RunWorkshop
}

export interface RunsPart extends Omit<RunPart, 'outline'> {
  readonly source: MeshSource
  readonly unit: LengthUnit
  readonly pose: Pose
  readonly supportAngleDeg: number
}

export interface RunsAnswer {
  /** Every way to divide the pieces; null where there are too many of them. */
  readonly ways: Readonly<Record<RunWay, readonly PlannedRun[]>> | null
  readonly unfit: readonly Unfit[]
  /** From above, turned by nothing, and the bed it covers; by part. */
  readonly plans: Readonly<Record<string, PiecePlan>>
}

export interface PiecePlan {
  readonly drawing: LineDrawing
  readonly areaMm2: number
}

/** Reads a printer's toolpath piece by piece, packed with gzip or not, and finds the part it prints. */
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

/** Packs files into a ZIP, in the order given. */
export interface PackAsk {
  readonly kind: 'pack'
  readonly entries: readonly PackEntry[]
}

export interface PackEntry {
  readonly path: string
  readonly content: Blob | string
}

export interface UnpackAsk {
  readonly kind: 'unpack'
  readonly blob: Blob
}

/** One entry of a ZIP; `hash` is the SHA-256 of the unpacked bytes. A damaged entry is told, the others go on. */
export type UnpackedEntry =
  | { readonly ok: true; readonly path: string; readonly blob: Blob; readonly hash: string }
  | { readonly ok: false; readonly path: string; readonly reason: string }

export interface UnpackAnswer {
  readonly entries: readonly UnpackedEntry[]
  /** The archive ends before its own table of contents. */
  readonly cutShort: boolean
}

/** Every kind of job: what is asked, what it tells on its way, what it answers. */
export interface JobTable {
  readonly open: { readonly ask: OpenAsk; readonly event: never; readonly answer: OpenAnswer }
  readonly analyse: {
    readonly ask: AnalyseAsk
    readonly event: AnalyseEvent
    readonly answer: AnalyseAnswer
  }
  readonly mesh: { readonly ask: MeshAsk; readonly event: never; readonly answer: PlacedMesh }
  readonly shape: { readonly ask: ShapeAsk; readonly event: never; readonly answer: PartShape }
  readonly split: { readonly ask: SplitAsk; readonly event: never; readonly answer: SplitAnswer }
  readonly poses: {
    readonly ask: PosesAsk
    readonly event: never
    readonly answer: readonly PoseOption[]
  }
  readonly draw: { readonly ask: DrawAsk; readonly event: never; readonly answer: DrawAnswer }
  readonly offers: { readonly ask: OffersAsk; readonly event: never; readonly answer: OffersAnswer }
  readonly look: {
    readonly ask: LookAsk
    readonly event: never
    readonly answer: LookAnswer | null
  }
  readonly runs: { readonly ask: RunsAsk; readonly event: never; readonly answer: RunsAnswer }
  readonly cut: { readonly ask: CutAsk; readonly event: never; readonly answer: PartSection }
  readonly toolpath: {
    readonly ask: ToolpathAsk
    readonly event: ToolpathEvent
    readonly answer: ToolpathAnswer
  }
  readonly pack: { readonly ask: PackAsk; readonly event: never; readonly answer: Blob }
  readonly unpack: { readonly ask: UnpackAsk; readonly event: never; readonly answer: UnpackAnswer }
}

export type JobKind = keyof JobTable
export type Ask = JobTable[JobKind]['ask']
export type JobEvent = JobTable[JobKind]['event']
export type Answer = JobTable[JobKind]['answer']

/** Page to worker. One at a time: the pool sends the next once the answer is there. */
export interface AskMessage<A = Ask> {
  readonly id: number
  readonly ask: A
}

/** Worker to page; `id` is the one of the question. */
export type ReplyMessage<E = JobEvent, R = Answer> =
  | { readonly id: number; readonly kind: 'event'; readonly event: E }
  | { readonly id: number; readonly kind: 'answer'; readonly answer: R }
  | { readonly id: number; readonly kind: 'problem'; readonly problem: Problem }
