import type { Census } from '../../core/model/census.ts'
import type { Material, PartFigures, Prices, Printer } from '../../core/model/figures.ts'
import { partFigures } from '../../core/figures/part.ts'
import { roughFigures } from '../../core/figures/rough.ts'
import {
  frameTotals,
  type FrameTotals,
  type RowTotals,
  type TotalRow,
} from '../../core/frame/total.ts'
import type { CarbonFrame, Frame, Part } from '../../core/model/frame.ts'
import type { Rough } from '../../jobs/protocol.ts'
import { materialOf } from './materialOf.ts'
import type { AppState, PartWork } from './types.ts'

/** One row of the ledger. */
export interface LedgerRow {
  readonly part: Part
  readonly work: PartWork
  readonly material: Material
  /** Of one piece; null until the mesh has been looked at, or when it could not be read. */
  readonly figures: PartFigures | null
  /** All pieces and their shares of the frame; null like `figures`. */
  readonly totals: RowTotals | null
  /** What the figures rest on: volume and area or a few layers, or all layers counted. */
  readonly basis: 'none' | 'rough' | 'census'
  /** The layers were counted for earlier settings; a newer count is on its way. */
  readonly stale: boolean
  /** How far the running analysis is, 0–1; null when none is. */
  readonly progress: number | null
}

/** The frame in one look. */
export interface FrameSummary {
  readonly totals: FrameTotals
  readonly partCount: number
  /** Pieces printed, spares included. */
  readonly pieceCount: number
  /** Rows by what their figures rest on; together `partCount`. */
  readonly censusCount: number
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

/** Figures by part: an edit makes a new part object, so that one is computed again and the others are found here. */
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
      ? partFigures(source, part.recipe, material, printer, prices)
      : roughFigures(source, part.recipe, material, printer, prices)
  priced.set(part, { source, material, printer, prices, figures })
  return figures
}

function sourceOf(work: PartWork): Census | Rough | null {
  if (work.kind === 'done') return work.census
  return work.kind === 'rough' ? (work.coarse ?? work.rough) : null
}

interface Ledger {
  readonly rows: readonly LedgerRow[]
  readonly summary: FrameSummary
}

/** The ledger of the state last asked about; the page has one state, so one is enough. */
let last: {
  readonly frame: Frame
  readonly work: AppState['work']
  readonly ledger: Ledger
} | null = null

function ledgerOf({ frame, work }: Pick<AppState, 'frame' | 'work'>): Ledger {
  if (last?.frame === frame && last.work === work) return last.ledger
  const facts = frame.parts.map((part) => {
    const own = work[part.id] ?? QUEUED
    const material = materialOf(frame, part.materialId)
    return { part, work: own, material, figures: figuresOf(part, own, material, frame) }
  })
  const totals = totalsOf(facts, frame.carbon)
  const byId = new Map(totals.rows.map((row) => [row.id, row]))
  const rows = facts.map((each) => rowOf(each, byId.get(each.part.id) ?? null))
  const ledger = { rows, summary: summarise(totals, rows) }
  last = { frame, work, ledger }
  return ledger
}

let lastTotals: {
  readonly rows: readonly TotalRow[]
  readonly carbon: CarbonFrame | null
  readonly totals: FrameTotals
} | null = null

/** The sums; the same object while no figure and no number of pieces changed, as when only progress is told. */
function totalsOf(
  facts: readonly Pick<LedgerRow, 'part' | 'figures'>[],
  carbon: CarbonFrame | null,
): FrameTotals {
  const rows = facts.flatMap(({ part, figures }): TotalRow[] => {
    const { id, quantity, spares } = part
    return figures === null ? [] : [{ id, quantity, spares, figures }]
  })
  if (lastTotals?.carbon === carbon && sameRows(lastTotals.rows, rows)) return lastTotals.totals
  const totals = frameTotals(rows, carbon)
  lastTotals = { rows, carbon, totals }
  return totals
}

function sameRows(a: readonly TotalRow[], b: readonly TotalRow[]): boolean {
  return (
    a.length === b.length &&
    a.every((row, i) => {
      const other = b[i]
      return (
        row.figures === other?.figures &&
        row.id === other.id &&
        row.quantity === other.quantity &&
        row.spares === other.spares
      )
    })
  )
}

function rowOf(
  facts: Pick<LedgerRow, 'part' | 'work' | 'material' | 'figures'>,
  totals: RowTotals | null,
): LedgerRow {
  const { part, work, material, figures } = facts
  const known = drawn.get(part)
  if (
    known?.work === work &&
    known.material === material &&
    known.figures === figures &&
    sameTotals(known.totals, totals)
  ) {
    return known
  }
  const row: LedgerRow = {
    part,
    work,
    material,
    figures,
    totals,
    basis: work.kind === 'done' ? 'census' : work.kind === 'rough' ? 'rough' : 'none',
    stale: work.kind === 'done' && work.newerFraction !== null,
    progress: progressOf(work),
  }
  drawn.set(part, row)
  return row
}

/** Of equal figures; the pieces and the shares may still differ. */
function sameTotals(a: RowTotals | null, b: RowTotals | null): boolean {
  if (a === null || b === null) return a === b
  return (
    a.massG.mid === b.massG.mid &&
    a.cost.mid === b.cost.mid &&
    a.timeS.mid === b.timeS.mid &&
    a.massShare === b.massShare &&
    a.costShare === b.costShare &&
    a.timeShare === b.timeShare
  )
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

function summarise(totals: FrameTotals, rows: readonly LedgerRow[]): FrameSummary {
  const count = (test: (row: LedgerRow) => boolean) => rows.filter(test).length
  const done = rows.reduce((sum, row) => sum + (row.progress ?? 1), 0)
  return {
    totals,
    partCount: rows.length,
    pieceCount: rows.reduce((sum, { part }) => sum + part.quantity + part.spares, 0),
    censusCount: count((row) => row.basis === 'census'),
    roughCount: count((row) => row.basis === 'rough'),
    missingCount: count((row) => row.basis === 'none'),
    failedCount: count((row) => row.work.kind === 'failed'),
    runningCount: count((row) => row.progress !== null),
    progress: rows.length === 0 ? 1 : done / rows.length,
  }
}

/** The ledger's rows in the frame's order. The same array while frame and work are the same. */
export function ledgerRows(state: Pick<AppState, 'frame' | 'work'>): readonly LedgerRow[] {
  return ledgerOf(state).rows
}

/**
 * Totals, counts and progress. The same object while frame and work are the same; its `totals` stay the same object
 * while no figure changed.
 */
export function frameSummary(state: Pick<AppState, 'frame' | 'work'>): FrameSummary {
  return ledgerOf(state).summary
}
