import type { Census } from '../../core/model/census.ts'
import type { Frame, Part } from '../../core/model/frame.ts'
import type { Material, PartFigures } from '../../core/model/figures.ts'
import type { PartRead } from '../../jobs/asks/partAsks.ts'
import type { PlannedRun } from '../../core/runs/planBeds.ts'
import type { Problem } from '../../core/model/problem.ts'
import type { ReckonedRuns } from '../../core/runs/reckonRuns.ts'
import type { Rough } from '../../jobs/asks/fileAsks.ts'
import type { RunWay } from '../../core/model/runs.ts'
import type { RunsAnswer } from '../../jobs/asks/frameAsks.ts'
import type { ToolpathFigures } from '../../core/model/toolpath.ts'
import type { ToolpathMatch } from '../../jobs/asks/toolpathAsks.ts'
import type { Workshop } from './workshop.ts'
import type { withJointItems } from '../../core/aircraft/hardware/jointItems.ts'

export type { LaidPiece } from '../actions/drawings.ts'
export type { LookAnswer, PartRead, PartShape, Thumbnail } from '../../jobs/asks/partAsks.ts'
export type { LooseRow, OffersAnswer, PiecePlan, RunsAnswer } from '../../jobs/asks/frameAsks.ts'
export type { Rough } from '../../jobs/asks/fileAsks.ts'

/** Facts only; every total is computed from them in derived.ts. */
export interface AppState {
  readonly frame: Frame
  /** What the workers know of each part, by part id; never saved. */
  readonly work: Readonly<Record<string, PartWork>>
  /** The print runs of the frame as they were last laid; null until they are, never saved. */
  readonly runs: LaidRuns | null
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
  /**
   * For parts of this visit whose file states no unit: which drop it came in, by part id; never
   * saved.
   */
  readonly dropOf: Readonly<Record<string, string>>
  /**
   * Whether the last change is in the browser's storage yet. `memory` means it cannot be stored;
   * `reason` says why.
   */
  readonly storage: StorageStatus
  /** What undo and redo would do, as words for the buttons; null when there is nothing. */
  readonly undoLabel: string | null
  readonly redoLabel: string | null
  /** A short note shown for a while, with an undo where one makes sense. */
  readonly notice: Notice | null
  /** What the demo loaded in this visit is about; null once dismissed. */
  readonly story: DemoStory | null
  /**
   * What belongs to the builder, not to one frame; what readings of this and earlier frames taught
   * is part of it.
   */
  readonly workshop: Workshop
  /**
   * Adds what the joints take to what is bought. Fetched after the page; null until then, and where
   * it failed.
   */
  readonly addScrews: AddScrews | null
  /** The projects kept on this device, as last listed; the latest change first. */
  readonly projects: readonly ProjectSummary[]
  /**
   * The project that another tab has, or changed: here it can be looked at, not changed. Null when
   * there is none.
   */
  readonly elsewhere: Elsewhere | null
}

export type AddScrews = typeof withJointItems

/**
 * Pieces on their beds. Where they lie depends on no infill, so that it stays while a slider is
 * dragged.
 */
export interface LaidRuns {
  /** What was laid, and how: equal keys give equal runs. */
  readonly key: string
  /** Newer ones are being laid. */
  readonly isOld: boolean
  readonly answer: RunsAnswer
  /** The runs, or others, in the figures of these rows; the same object for the same rows. */
  readonly reckon: (
    rows: readonly RunRow[],
    frame: Pick<Frame, 'printer' | 'printers' | 'prices' | 'runs'>,
    others?: readonly PlannedRun[],
  ) => ReckonedRuns
  /**
   * Lays the present frame's pieces into print runs in these ways, and draws each part from above;
   * null where a part is not counted yet, its mesh cannot be had, or once `signal` is aborted.
   */
  readonly layOthers: (ways: readonly RunWay[], signal: AbortSignal) => Promise<RunsAnswer | null>
}

/** A part as its runs need it. */
export interface RunRow {
  readonly part: Part
  readonly work: PartWork
  readonly material: Material
  readonly figures: PartFigures | null
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
      /**
       * Counted from about every 8th layer; null before that, and for parts that need no such step.
       */
      readonly coarse: Census | null
      readonly fraction: number
    }
  | {
      readonly kind: 'done'
      readonly read: PartRead
      readonly census: Census
      /**
       * Null when the census fits the part's present settings; else how far the newer run is (0–1).
       */
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

/**
 * A file on its way in: bytes and a name, whatever the rim got it from (drop, picker, paste,
 * archive).
 */
export interface IncomingFile {
  readonly name: string
  readonly blob: Blob
}
