import type { Aircraft } from '../../core/model/aircraft.ts'
import type { CarbonFrame, Frame, PartWay, Variant } from '../../core/model/frame.ts'
import type { Census } from '../../core/model/census.ts'
import type { NoBeam, PartSections } from '../../core/stiffness/part/sections.ts'
import type { ChosenUse } from '../../core/model/drill.ts'
import type { DrawFrame, LaidPiece } from './drawings.ts'
import type { GeometrySettings, Pose, Recipe } from '../../core/model/settings.ts'
import type { IncomingFile } from '../store/types.ts'
import type { LengthUnit } from '../../core/model/mesh.ts'
import type { LookAnswer, PartShape, PlacedMesh, StiffEvent } from '../../jobs/asks/partAsks.ts'
import type { Material, Prices, Printer } from '../../core/model/figures.ts'
import type { MineKind } from '../store/workshop.ts'
import type { FrameSign } from '../../core/aircraft/report/frameSigns.ts'
import type { OffersAnswer, RepeatsAsk, WaysAsk } from '../../jobs/asks/frameAsks.ts'
import type { Repeat } from '../../core/joints/repeatWay.ts'
import type { Way } from '../../core/joints/waysFor.ts'
import type { Outcome } from '../../core/model/problem.ts'
import type { PartHoles } from '../../core/drill/types.ts'
import type { PartSection, SectionAxis } from '../../core/census/section/types.ts'
import type { PartView } from './partLooks.ts'
import type { PoseOption } from '../../core/mesh/poseOptions.ts'
import type { RunSettings } from '../../core/model/runs.ts'
import type { ShownUnits } from '../../core/words/shownUnits.ts'
import type { Spool } from '../../core/model/spools.ts'
import type { StiffPart, StiffPartAsk } from '../../core/stiffness/part/stiffPart.ts'

/**
 * Everything the page may do to the state. Built by `createActions` from the store, a runner and a
 * storage, so that tests pass their own. None throws; what goes wrong lands in `failures`, `work`
 * or `notice`.
 */
export interface Actions {
  /**
   * Adds a part a mesh file; a ZIP of meshes is opened, a project file replaces the frame (after
   * the caller asked).
   */
  addFiles(files: readonly IncomingFile[]): Promise<void>
  /** Makes a frame of these pieces, on the present printer and of the present first plastic. */
  loadPieces(name: string, pieces: readonly LoadedPiece[]): Promise<void>
  /** Loads one of the built-in demo aircraft in place of the present frame. */
  loadDemo(id: 'sandpiper' | 'tern'): Promise<void>
  openProject(file: IncomingFile): Promise<void>
  /**
   * Stops opening these files (ids of `incoming`) at once; the others go on. Nothing is said of
   * what was stopped.
   */
  cancelOpening(ids: readonly string[]): void
  saveProject(): Promise<Blob>
  newFrame(): void
  renameFrame(name: string): void
  /**
   * Changes fields of several parts at once. Calls with the same `gesture` become one undo step (a
   * slider drag).
   */
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
  /** What stands on the builder's shelf, for every frame. */
  putSpools(spools: readonly Spool[]): void
  /**
   * Names the recipe of a part, as a role of the user's own; refused with a notice where the name
   * is taken or empty.
   */
  keepRole(partId: string, name: string): void
  renameRole(roleId: string, name: string): void
  /** Parts of it keep their recipe. */
  dropRole(roleId: string): void
  /** Changes what was read of the whole frame, or off the clock; `what` are the words for undo. */
  putReadings(
    patch: Partial<Pick<Frame, 'wholes' | 'clocks' | 'laid' | 'holeReadings'>>,
    what: string,
  ): void
  /** The printers that print the frame beside its own. */
  putPrinters(printers: readonly Printer[], what: string, gesture?: string): void
  /** One of those becomes the frame's own, which takes its place. */
  swapPrinter(id: string): void
  /** Changes how the pieces are printed together; `what` are the words for undo. */
  putRuns(patch: Partial<RunSettings>, what: string, gesture?: string): void
  /**
   * Gives parts, by id, other ways to be printed, all in one step; `what` are the words for undo.
   */
  takeWays(ways: Readonly<Record<string, PartWay>>, what: string): void
  /** Keeps these variants beside what stands; `what` are the words for undo. */
  putVariants(variants: readonly Variant[], what: string): void
  /** Changes blocks of the aircraft beyond its printed parts; `what` are the words for undo. */
  putAircraft(patch: Partial<Aircraft>, what: string, gesture?: string): void
  /**
   * Ways in which parts can meet, and by what; null once `signal` is aborted, or where no worker
   * answers.
   */
  listJointOffers(signal: AbortSignal): Promise<OffersAnswer | null>
  /** Ways for a loose piece to be joined; null as `listJointOffers`. */
  listWays(ask: Omit<WaysAsk, 'kind'>, signal: AbortSignal): Promise<readonly Way[] | null>
  /** How a way can be repeated; null as `listJointOffers`. */
  listRepeats(ask: Omit<RepeatsAsk, 'kind'>, signal: AbortSignal): Promise<readonly Repeat[] | null>
  /**
   * How much of pieces is in each other, mm³, pair by pair of places in `pieces`; null as
   * `listJointOffers`.
   */
  findClashes(
    pieces: readonly LaidPiece[],
    pairs: readonly (readonly [one: number, other: number])[],
    signal: AbortSignal,
  ): Promise<readonly number[] | null>
  /**
   * What runs into what where the frame stands, and where; null as `listJointOffers`, and while a
   * mesh is not at hand.
   */
  listSigns(signal: AbortSignal): Promise<readonly FrameSign[] | null>
  /** Holes of the frame's parts; null once `signal` is aborted, or where no worker answers. */
  listHoles(signal: AbortSignal): Promise<readonly PartHoles[] | null>
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
  /**
   * Makes a row of each kind of part in the part's file, equal ones counted; see `PartRead.plate`.
   */
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
  /**
   * How the part gives, as it is or otherwise; null where its mesh cannot be had. Telling and
   * calling off go through `options`. What was answered is kept for the visit.
   */
  stiffenPart(
    id: string,
    wanted: Omit<StiffPartAsk, 'pose' | 'recipe' | 'material'>,
    options: { readonly signal: AbortSignal; readonly onEvent?: (event: StiffEvent) => void },
    other?: LaidOtherwise,
  ): Promise<Outcome<StiffPart> | null>
  /** The part as a beam, whatever its infill, plastic and load; kept like `stiffenPart`’s. */
  sectionPart(
    id: string,
    wanted: Pick<StiffPartAsk, 'jointBores' | 'pick' | 'pickPose'>,
    signal: AbortSignal,
    other?: LaidOtherwise,
  ): Promise<Outcome<PartSections | NoBeam> | null>
  /** The part's mesh in mm and in its pose, for the 3D view. */
  loadMesh(id: string): Promise<PlacedMesh>
}

/** What of a part is not as it stands; its printer’s habits hold. */
export interface LaidOtherwise {
  readonly pose?: Pose
  readonly recipe?: Partial<Recipe>
  readonly material?: Material
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
  readonly holeUses?: readonly ChosenUse[]
}

/**
 * What `createActions` returns: the page's actions, and what only its start, its end and tests
 * need.
 */
export interface Session extends Actions {
  /**
   * Brings back the frame of the last visit, if the browser kept one. Call once, before anything
   * else.
   */
  restore(): Promise<void>
  /** Writes what is not in storage yet, now. */
  flush(): Promise<void>
  /** Resolves once nothing is being opened, analysed or saved. */
  settled(): Promise<void>
  close(): void
}
