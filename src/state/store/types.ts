import type { Joint } from '../../core/model/joints.ts'
import type { Aircraft } from '../../core/model/aircraft.ts'
import type { Census } from '../../core/model/census.ts'
import type { Material, Prices, Printer } from '../../core/model/figures.ts'
import type { CarbonFrame, Frame } from '../../core/model/frame.ts'
import type { LengthUnit } from '../../core/model/mesh.ts'
import type { Problem } from '../../core/model/problem.ts'
import type { RunSettings } from '../../core/model/runs.ts'
import type { PoseOption } from '../../core/mesh/poseOptions.ts'
import type { GeometrySettings, Pose, Recipe } from '../../core/model/settings.ts'
import type { PartSection, SectionAxis } from '../../core/census/section/types.ts'
import type { ToolpathFigures } from '../../core/model/toolpath.ts'
import type { JointOffer } from '../../core/joints/offerJoints.ts'
import type { ShownUnits } from '../../core/words/shownUnits.ts'
import type { DrawFrame } from '../actions/drawings.ts'
import type { PartView } from '../actions/partLooks.ts'
import type {
  LookAnswer,
  PartRead,
  PartShape,
  PlacedMesh,
  Rough,
  RunsAnswer,
  ToolpathMatch,
} from '../../jobs/protocol.ts'
import type { MineKind, Workshop } from './workshop.ts'

export type {
  LookAnswer,
  LooseRow,
  PartRead,
  PartShape,
  PiecePlan,
  Rough,
  RunsAnswer,
  Thumbnail,
} from '../../jobs/protocol.ts'

/** Facts only; every total is computed from them in derived.ts. */
export interface AppState {
  readonly frame: Frame
  /** What the workers know of each part, by part id; never saved. */
  readonly work: Readonly<Record<string, PartWork>>
  /** Files of this visit that could not become a part; the user dismisses them. */
  readonly failures: readonly FileFailure[]
  /** Toolpaths read in this visit, the latest first; never saved. */
  readonly toolpaths: readonly ReadToolpath[]
  /** Files that are still being opened, in the order they came. */
  readonly incoming: readonly OpeningFile[]
  /** Part ids ticked in the ledger. */
  readonly selection: readonly string[]
  /** The part opened in place; null when all rows are closed. */
  readonly openPartId: string | null
  /** For parts of this visit whose file states no unit: which drop it came in, by part id; never saved. */
  readonly dropOf: Readonly<Record<string, string>>
  /** Whether the last change is in the browser's storage yet. `memory` means it cannot be stored; `reason` says why. */
  readonly storage: StorageStatus
  /** What undo and redo would do, as words for the buttons; null when there is nothing. */
  readonly undoLabel: string | null
  readonly redoLabel: string | null
  /** A short note shown for a while, with an undo where one makes sense. */
  readonly notice: Notice | null
  /** What the demo loaded in this visit is about; null once dismissed. */
  readonly story: DemoStory | null
  /** What belongs to the builder, not to one frame; what readings of this and earlier frames taught is part of it. */
  readonly workshop: Workshop
  /** The projects kept on this device, as last listed; the latest change first. */
  readonly projects: readonly ProjectSummary[]
  /** The project that another tab has, or changed: here it can be looked at, not changed. Null when there is none. */
  readonly elsewhere: Elsewhere | null
}

/** Shown only while that frame is the present one. */
export interface DemoStory {
  readonly frameId: string
  readonly text: string
}

/** One line of the list of projects. Times in milliseconds since 1970. */
export interface ProjectSummary {
  readonly id: string
  readonly name: string
  readonly partCount: number
  /** Null while not all layers were counted. */
  readonly massG: number | null
  readonly changedAt: number
  /** When it was deleted; it can be brought back for a day. */
  readonly deletedAt: number | null
}

/**
 * `open`: another tab had it first; `taken`: another tab took it over; `changed`: another tab wrote
 * what is not seen here.
 */
export interface Elsewhere {
  readonly projectId: string
  readonly why: 'open' | 'taken' | 'changed'
}

export type StorageStatus =
  | { readonly kind: 'saved' }
  | { readonly kind: 'saving' }
  | { readonly kind: 'memory'; readonly reason: string }

export interface Notice {
  readonly text: string
  readonly canUndo: boolean
}

/**
 * Stage of one part. Figures appear at `rough`, are refined by `coarse` and at `done`, and stay
 * from an older run while `stale`.
 */
export type PartWork =
  | { readonly kind: 'queued' }
  | { readonly kind: 'reading'; readonly fraction: number }
  | {
      readonly kind: 'rough'
      readonly rough: Rough
      /** Present once the mesh has been measured. */
      readonly read: PartRead | null
      /** Counted from about every 8th layer; null before that, and for parts that need no such step. */
      readonly coarse: Census | null
      readonly fraction: number
    }
  | {
      readonly kind: 'done'
      readonly read: PartRead
      readonly census: Census
      /** Null when the census fits the part's present settings; else how far the newer run is (0–1). */
      readonly newerFraction: number | null
    }
  | { readonly kind: 'failed'; readonly problem: Problem; readonly read: PartRead | null }

export interface FileFailure {
  readonly id: string
  readonly fileName: string
  readonly problem: Problem
  /** The rest of the file was opened. */
  readonly partial?: true
}

/** A file that is being opened; `id` is for `cancelOpening`. */
export interface OpeningFile {
  readonly id: string
  readonly name: string
  /** How much of it is read, 0–1; left out where nobody tells. */
  readonly fraction?: number
}

/** A printer's file that was read, beside the part it prints. */
export interface ReadToolpath {
  readonly id: string
  /** The frame it was dropped on. */
  readonly frameId: string
  readonly fileName: string
  readonly figures: ToolpathFigures
  readonly match: ToolpathMatch | null
}

/** A file on its way in: bytes and a name, whatever the rim got it from (drop, picker, paste, archive). */
export interface IncomingFile {
  readonly name: string
  readonly blob: Blob
}

/**
 * Everything the page may do to the state. Built by `createActions` from the store, a runner and a
 * storage, so that tests pass their own. None throws; what goes wrong lands in `failures`, `work`
 * or `notice`.
 */
export interface Actions {
  /** Adds a part a mesh file; a ZIP of meshes is opened, a project file replaces the frame (after the caller asked). */
  addFiles(files: readonly IncomingFile[]): Promise<void>
  /** Makes a frame of these pieces, on the present printer and of the present first plastic. */
  loadPieces(name: string, pieces: readonly LoadedPiece[]): Promise<void>
  /** Loads one of the built-in demo aircraft in place of the present frame. */
  loadDemo(id: 'sandpiper' | 'tern'): Promise<void>
  openProject(file: IncomingFile): Promise<void>
  /** Stops opening these files (ids of `incoming`) at once; the others go on. Nothing is said of what was stopped. */
  cancelOpening(ids: readonly string[]): void
  saveProject(): Promise<Blob>
  newFrame(): void
  renameFrame(name: string): void
  /** Changes fields of several parts at once. Calls with the same `gesture` become one undo step (a slider drag). */
  updateParts(ids: readonly string[], patch: PartPatch, gesture?: string): void
  /** `role` may be the id of a role of the user's own, in the frame or in the workshop. */
  applyRole(ids: readonly string[], role: string): void
  duplicateParts(ids: readonly string[]): void
  removeParts(ids: readonly string[]): void
  /** Adds or replaces a material of the user's. */
  putMaterial(material: Material, gesture?: string): void
  /** Takes a material of the user's out of frame and workshop; refused while a part is of it. */
  dropMaterial(id: string): void
  putPrinter(printer: Printer, gesture?: string): void
  putPrices(prices: Prices, gesture?: string): void
  putCarbon(carbon: CarbonFrame | null, gesture?: string): void
  /** Keeps what a scale said of pieces of a part, with what they were then; null forgets it. */
  weighPart(id: string, onScale: OnScale | null): void
  /** Drops what earlier frames taught of a spool on a printer; of the printer's hours with null. */
  forgetLessons(materialId: string | null, printerId: string): void
  /** Drops lessons by id; those of the present frame come back as long as its readings stand. */
  dropLessons(ids: readonly string[]): void
  /** Makes what the present frame has the builder's own, for frames to come. */
  keepAsMine(kind: MineKind): void
  /** Gives the present frame what is the builder's own. */
  takeMine(kind: MineKind): void
  /** Chooses what the builder reads and types in, in every frame; nothing that is kept changes. */
  putUnits(units: ShownUnits): void
  /**
   * Names the recipe of a part, as a role of the user's own; refused with a notice where the name
   * is taken or empty.
   */
  keepRole(partId: string, name: string): void
  renameRole(roleId: string, name: string): void
  /** Parts of it keep their recipe. */
  dropRole(roleId: string): void
  /** Changes what was read of the whole frame, or off the clock; `what` are the words for undo. */
  putReadings(patch: Partial<Pick<Frame, 'wholes' | 'clocks'>>, what: string): void
  /** Changes how the pieces are printed together; `what` are the words for undo. */
  putRuns(patch: Partial<RunSettings>, what: string, gesture?: string): void
  /**
   * Lays the present frame's pieces into print runs, every way there is; null where a part is not
   * counted yet, its mesh cannot be had, or once `signal` is aborted.
   */
  layRuns(signal: AbortSignal): Promise<RunsAnswer | null>
  /** Changes blocks of the aircraft beyond its printed parts; `what` are the words for undo. */
  putAircraft(patch: Partial<Aircraft>, what: string, gesture?: string): void
  /** Ways in which two or more holes of parts can meet; null once `signal` is aborted, or where no worker answers. */
  listJointOffers(signal: AbortSignal): Promise<readonly JointOffer[] | null>
  /** Lets two pieces meet; refused with a notice where one of them is not there or both are one. */
  addJoint(joint: Omit<Joint, 'id'>): void
  /** Takes the joint and its screws away; what hung on it stays where its place is typed. */
  dropJoint(id: string): void
  select(ids: readonly string[]): void
  openPart(id: string | null): void
  dismissFailure(id: string): void
  dismissNotice(): void
  dismissStory(): void
  retryPart(id: string): void
  /**
   * Counts all layers of the part from now on, however long it takes. No step of undo: it changes
   * nothing that was typed.
   */
  countFully(id: string): void
  /** Gives the part that a toolpath prints the recipe and the way up that its moves show. */
  takeRecipe(toolpathId: string): void
  /** Gives the printer the habits and speeds that a toolpath's moves show. */
  takeHabits(toolpathId: string): void
  dismissToolpath(toolpathId: string): void
  undo(): void
  redo(): void
  /** Brings `projects` up to date. */
  listProjects(): Promise<void>
  /** Shows a project of the list in place of the present one, which stays in the list. */
  openStored(id: string): Promise<void>
  renameProject(id: string, name: string): Promise<void>
  duplicateProject(id: string): Promise<void>
  /** It can be brought back for a day. Of the present project another one takes the place. */
  deleteProject(id: string): Promise<void>
  bringBackProject(id: string): Promise<void>
  /** Takes the present project over from the other tab that has it, as it is stored now. */
  takeOver(): Promise<void>
  /** Goes on with a copy of what is seen, as a project of its own. */
  openCopy(): void
  /** Says something for a while, with the undo of the last change beside it. */
  tell(text: string): void
  /** Makes a row of each kind of part in the part's file, equal ones counted; see `PartRead.plate`. */
  splitPlate(id: string): Promise<void>
  /** Gives the part its mesh without the loose scraps that a finding named. */
  dropSpecks(id: string): Promise<void>
  /**
   * Gives the part zones, each a mesh drawn in its own place whose inside has an infill of its own;
   * later ones hold over earlier.
   */
  addZones(partId: string, files: readonly IncomingFile[]): Promise<void>
  dropZone(partId: string, meshHash: string): void
  /** Moves a zone one place down the list: it then holds over the one it passes. */
  lowerZone(partId: string, meshHash: string): void
  setZonePct(partId: string, meshHash: string, infillPct: number): void
  /** The ways the part can lie, best first. Rejects like `loadMesh`. */
  listPoses(id: string): Promise<readonly PoseOption[]>
  /**
   * Counts a part with some of its recipe changed, or lying another way, and changes nothing; null
   * once `signal` is aborted.
   */
  tryRecipe(
    id: string,
    patch: Partial<GeometrySettings>,
    signal: AbortSignal,
    pose?: Pose,
  ): Promise<Census | null>
  /** What balance and the carbon twin need of the part's mesh. Rejects like `loadMesh`. */
  loadShape(id: string): Promise<PartShape>
  /** The frame in lines, or some of its parts. Calls are answered in turn; none is called off. */
  drawFrame: DrawFrame
  /** One part in lines as it lies on the bed; null where its mesh cannot be had or has no size. */
  lookAtPart(id: string, wanted: PartView): Promise<LookAnswer | null>
  /**
   * The part cut by a plane, `share` (0–1) of its extent along the axis; null where its mesh cannot
   * be had.
   */
  cutPart(id: string, axis: SectionAxis, share: number): Promise<PartSection | null>
  /** The part's mesh in mm and in its pose, for the 3D view. */
  loadMesh(id: string): Promise<PlacedMesh>
}

/** A piece made by the page itself. */
export interface LoadedPiece {
  readonly file: IncomingFile
  readonly name: string
  readonly note: string
  readonly recipe: Recipe
}

/** Some pieces of one part on a scale. */
export interface OnScale {
  /** What the scale showed, tare and all. */
  readonly scaleG: number
  readonly pieces: number
  readonly tareG: number
  readonly stepG: number
  /** Its user stands by it, however odd it looks. */
  readonly trusted: boolean
}

/** Fields of a part the user edits; `recipe` is merged key by key. */
export interface PartPatch {
  readonly name?: string
  readonly unit?: LengthUnit
  readonly keepsHairs?: boolean
  readonly quantity?: number
  readonly spares?: number
  readonly mirrored?: number
  readonly materialId?: string
  readonly recipe?: Partial<Recipe>
  readonly pose?: Pose
  readonly note?: string
}

/** What `createActions` returns: the page's actions, and what only its start, its end and tests need. */
export interface Session extends Actions {
  /** Brings back the frame of the last visit, if the browser kept one. Call once, before anything else. */
  restore(): Promise<void>
  /** Writes what is not in storage yet, now. */
  flush(): Promise<void>
  /** Resolves once nothing is being opened, analysed or saved. */
  settled(): Promise<void>
  close(): void
}
