import type { Aircraft } from '../../core/model/aircraft.ts'
import type { Census } from '../../core/model/census.ts'
import type { Material, PartFigures, Prices, Printer } from '../../core/model/figures.ts'
import { laidRecipe } from '../../core/figures/laidRecipe.ts'
import { partFigures } from '../../core/figures/part.ts'
import { roughFigures } from '../../core/figures/rough.ts'
import type { Lesson } from '../../core/doubt/lessons.ts'
import { carriedLessons } from '../../core/frame/lessonsOf.ts'
import type { FramePart, FrameRow, FrameSum } from '../../core/frame/types.ts'
import { weighFrame } from '../../core/frame/weighFrame.ts'
import type { ReckonedRuns } from '../../core/runs/reckonRuns.ts'
import type { Frame, Part } from '../../core/model/frame.ts'
import type { Rough } from '../../jobs/asks/fileAsks.ts'
import { materialOf } from './materialOf.ts'
import type { AppState, PartWork } from './types.ts'

/** One row of the ledger. */
export interface LedgerRow {
  readonly part: Part
  readonly work: PartWork
  readonly material: Material
  /** Of one piece; null until the mesh has been looked at, or when it could not be read. */
  readonly figures: PartFigures | null
  /**
   * What it is in the frame: its pieces, their mass by scale or figures, its shares; null like
   * `figures`.
   */
  readonly sum: FrameRow | null
  /**
   * What the figures rest on: volume and area or a few layers with more to come, some layers and no
   * more, or all layers.
   */
  readonly basis: 'none' | 'rough' | 'coarse' | 'census'
  /** The layers were counted for earlier settings; a newer count is on its way. */
  readonly stale: boolean
  /** How far the running analysis is, 0–1; null when none is. */
  readonly progress: number | null
}

/** The frame in one look. */
export interface FrameSummary {
  readonly sum: FrameSum
  readonly partCount: number
  /** Rows by what their figures rest on; together `partCount`. */
  readonly censusCount: number
  readonly coarseCount: number
  readonly roughCount: number
  /** Rows without figures: `failedCount` of them will not get any. */
  readonly missingCount: number
  readonly failedCount: number
  /** Rows whose analysis is still running. */
  readonly runningCount: number
  /** Mean progress of all rows, 0–1; 1 when all are done, and for an empty frame. */
  readonly progress: number
}

interface Priced {
  readonly source: Census | Rough
  readonly material: Material
  readonly printer: Printer
  readonly prices: Prices
  readonly figures: PartFigures
}

const QUEUED: PartWork = { kind: 'queued' }

/**
 * Figures by part: an edit makes a new part object, so that one is computed again and the others
 * are found here.
 */
const priced = new WeakMap<Part, Priced>()
/** Rows by part, so that a row that did not change is the same object and is not drawn again. */
const drawn = new WeakMap<Part, LedgerRow>()

function figuresOf(
  part: Part,
  work: PartWork,
  material: Material,
  frame: Frame,
): PartFigures | null {
  const source = sourceOf(work)
  if (source === null) return null
  const { printer, prices } = frame
  const known = priced.get(part)
  if (
    known?.source === source &&
    known.material === material &&
    known.printer === printer &&
    known.prices === prices
  ) {
    return known.figures
  }
  const figures =
    'layers' in source
      ? partFigures(source, laidRecipe(part, printer), material, printer, prices)
      : roughFigures(source, part.recipe, material, printer, prices)
  priced.set(part, { source, material, printer, prices, figures })
  return figures
}

function sourceOf(work: PartWork): Census | Rough | null {
  if (work.kind === 'done') return work.census
  return work.kind === 'rough' ? (work.coarse ?? work.rough) : null
}

/** What the frame's figures follow from; without lessons those of its own weighings only. */
export type FrameState = Pick<AppState, 'frame' | 'work'> &
  Partial<Pick<AppState, 'workshop' | 'addScrews' | 'runs'>>

interface Ledger {
  readonly rows: readonly LedgerRow[]
  readonly summary: FrameSummary
  readonly runs: ReckonedRuns | null
}

/** The ledger of the state last asked about; the page has one state, so one is enough. */
let last: {
  readonly frame: Frame
  readonly work: AppState['work']
  readonly lessons: readonly Lesson[]
  readonly aircraft: Aircraft
  readonly laid: AppState['runs']
  readonly ledger: Ledger
} | null = null

/**
 * The aircraft with all that is bought; without the screws of its joints while what counts them is
 * on its way.
 */
export function boughtAircraft({ frame, addScrews = null }: FrameState): Aircraft {
  return addScrews === null ? frame.aircraft : addScrews(frame)
}

function ledgerOf(state: FrameState): Ledger {
  const { frame, work, workshop, runs: laid = null } = state
  const lessons = workshop?.lessons ?? NO_LESSONS
  const aircraft = boughtAircraft(state)
  if (
    last?.frame === frame &&
    last.work === work &&
    last.lessons === lessons &&
    last.aircraft === aircraft &&
    last.laid === laid
  ) {
    return last.ledger
  }
  const counted = frame.parts.map((part) => {
    const own = work[part.id] ?? QUEUED
    const material = materialOf(frame, part.materialId)
    return { part, work: own, material, figures: figuresOf(part, own, material, frame) }
  })
  const runs = laid?.reckon(counted, frame) ?? null
  const sum = sumOf(counted, { ...frame, aircraft }, lessons, runs)
  const byId = new Map(sum.rows.map((row) => [row.part.id, row]))
  const rows = counted.map((each) => rowOf(each, byId.get(each.part.id) ?? null))
  const ledger = { rows, summary: summarise(sum, rows), runs }
  last = { frame, work, lessons, aircraft, laid, ledger }
  return ledger
}

let lastSum: {
  readonly parts: readonly FramePart[]
  readonly frame: Frame
  readonly lessons: readonly Lesson[]
  readonly sum: FrameSum
} | null = null

/**
 * The frame added up; the same object while nothing in it changed, as when only progress is told.
 */
function sumOf(
  counted: readonly Pick<LedgerRow, 'part' | 'material' | 'figures' | 'work'>[],
  frame: Frame,
  lessons: readonly Lesson[],
  runs: ReckonedRuns | null,
): FrameSum {
  const parts = counted.map(({ part, material, figures, work }): FramePart => {
    const share = runs?.shares.get(part.id)
    const printed = share === undefined ? {} : { share }
    return { part, material, figures, ...printed, failed: work.kind === 'failed' }
  })
  if (
    lastSum?.frame.aircraft === frame.aircraft &&
    lastSum.frame.carbon === frame.carbon &&
    lastSum.frame.printer === frame.printer &&
    lastSum.frame.wholes === frame.wholes &&
    lastSum.frame.clocks === frame.clocks &&
    lastSum.frame.laid === frame.laid &&
    sameLessons(carriedLessons(lastSum.lessons, frame.id), carriedLessons(lessons, frame.id)) &&
    sameParts(lastSum.parts, parts)
  ) {
    return lastSum.sum
  }
  const sum = weighFrame(parts, frame, carriedLessons(lessons, frame.id))
  lastSum = { parts, frame, lessons, sum }
  return sum
}

const NO_LESSONS: readonly Lesson[] = []

function sameLessons(a: readonly Lesson[], b: readonly Lesson[]): boolean {
  return a.length === b.length && a.every((one, i) => one === b[i])
}

function sameParts(a: readonly FramePart[], b: readonly FramePart[]): boolean {
  return (
    a.length === b.length &&
    a.every((one, i) => {
      const other = b[i]
      return (
        one.part === other?.part &&
        one.material === other.material &&
        one.figures === other.figures &&
        one.share === other.share &&
        one.failed === other.failed
      )
    })
  )
}

function rowOf(
  counted: Pick<LedgerRow, 'part' | 'work' | 'material' | 'figures'>,
  sum: FrameRow | null,
): LedgerRow {
  const { part, work, material, figures } = counted
  const known = drawn.get(part)
  if (
    known?.work === work &&
    known.material === material &&
    known.figures === figures &&
    sameSum(known.sum, sum)
  ) {
    return known
  }
  const row: LedgerRow = {
    part,
    work,
    material,
    figures,
    sum,
    basis: basisOf(work),
    stale: work.kind === 'done' && work.newerFraction !== null,
    progress: progressOf(work),
  }
  drawn.set(part, row)
  return row
}

/**
 * Of the same part and figures; another printer makes a weighing one of before, and shares follow
 * the other rows.
 */
function sameSum(a: FrameRow | null, b: FrameRow | null): boolean {
  if (a === null || b === null) return a === b
  return (
    a.massFrom === b.massFrom &&
    a.flying.massG.mid === b.flying.massG.mid &&
    a.flying.massG.low === b.flying.massG.low &&
    a.flying.massG.high === b.flying.massG.high &&
    a.scaleRatio === b.scaleRatio &&
    a.withSpares.cost.mid === b.withSpares.cost.mid &&
    a.withSpares.timeS.mid === b.withSpares.timeS.mid &&
    a.withSpares.timeS.low === b.withSpares.timeS.low &&
    a.changes.length === b.changes.length &&
    a.massShare === b.massShare &&
    a.costShare === b.costShare &&
    a.timeShare === b.timeShare
  )
}

function basisOf(work: PartWork): LedgerRow['basis'] {
  if (work.kind === 'done') return work.census.coarseMm3 > 0 ? 'coarse' : 'census'
  return work.kind === 'rough' ? 'rough' : 'none'
}

function progressOf(work: PartWork): number | null {
  switch (work.kind) {
    case 'queued':
      return 0
    case 'reading':
    case 'rough':
      return work.fraction
    case 'done':
      return work.newerFraction
    case 'failed':
      return null
  }
}

function summarise(sum: FrameSum, rows: readonly LedgerRow[]): FrameSummary {
  const count = (test: (row: LedgerRow) => boolean) => rows.filter(test).length
  const done = rows.reduce((all, row) => all + (row.progress ?? 1), 0)
  return {
    sum,
    partCount: rows.length,
    censusCount: count((row) => row.basis === 'census'),
    coarseCount: count((row) => row.basis === 'coarse'),
    roughCount: count((row) => row.basis === 'rough'),
    missingCount: count((row) => row.basis === 'none'),
    failedCount: count((row) => row.work.kind === 'failed'),
    runningCount: count((row) => row.progress !== null),
    progress: rows.length === 0 ? 1 : done / rows.length,
  }
}

/** The ledger's rows in the frame's order. The same array while frame and work are the same. */
export function ledgerRows(state: FrameState): readonly LedgerRow[] {
  return ledgerOf(state).rows
}

/**
 * Sums, counts and progress. The same object while frame and work are the same; its `sum` stays the
 * same object while nothing in it changed.
 */
export function frameSummary(state: FrameState): FrameSummary {
  return ledgerOf(state).summary
}

/** The print runs in their present figures; null until they are laid. */
export function reckonedRuns(state: FrameState): ReckonedRuns | null {
  return ledgerOf(state).runs
}

/** Hours and money may still change: pieces are being laid into runs. */
export function isLaying({
  runs,
  work,
  frame,
}: Pick<AppState, 'runs' | 'work' | 'frame'>): boolean {
  if (runs !== null) return runs.isOld
  return frame.parts.some(({ id }) => work[id]?.kind !== 'failed')
}

/** The frame added up, with everything bought. */
export function frameSum(state: FrameState): FrameSum {
  return ledgerOf(state).summary.sum
}

/** Everything that flies, g; null while only printed parts are known, which fly nowhere. */
export function allUpMassG(state: FrameState): number | null {
  return boughtAircraft(state).items.length === 0 ? null : frameSum(state).ledger.basicMassG
}
