import type { CostRange, PartFigures, Range } from '../model/figures.ts'
import type { CarbonFrame } from '../model/frame.ts'

/** One ledger row on its way into the frame's totals. */
export interface TotalRow {
  /** Part id. */
  readonly id: string
  /** Pieces that fly. */
  readonly quantity: number
  /** Pieces printed besides, that stay in the bag. */
  readonly spares: number
  /** Of one piece. */
  readonly figures: PartFigures
}

/** What a row adds to the frame. */
export interface RowTotals {
  readonly id: string
  /** `quantity` pieces: what flies. */
  readonly massG: Range
  /** `quantity + spares` pieces: what is paid for and printed. */
  readonly cost: CostRange
  readonly timeS: Range
  /** Shares (0–1) of the frame's middle figures; 0 where the frame's figure is 0. */
  readonly massShare: number
  readonly costShare: number
  readonly timeShare: number
}

export interface FrameTotals {
  readonly rows: readonly RowTotals[]
  /** Printed pieces that fly, spares left out. */
  readonly massG: Range
  /** Off the spools, cost and hours: spares included. */
  readonly spoolG: Range
  readonly filamentM: Range
  readonly cost: CostRange
  readonly timeS: Range
  /** Cost of the flying pieces alone, to set against a bought frame. */
  readonly flyingCost: CostRange
  /** Null when there is nothing to compare with. */
  readonly carbon: CarbonDifference | null
}

/** Printed minus carbon: above zero the printed frame is heavier or dearer. */
export interface CarbonDifference {
  readonly massG: Range
  /** Share of the carbon frame's mass; null when that is zero. */
  readonly massShare: Range | null
  /** Flying pieces against the frame as bought, in the prices' currency. */
  readonly cost: Range
}

/**
 * Sums a frame. Ranges add end to end (low to low, high to high) and not in quadrature: the parts share one spool's density,
 * one printer's habits and one model of hours, so when one part is heavy all are.
 */
export function frameTotals(rows: readonly TotalRow[], carbon: CarbonFrame | null): FrameTotals {
  const massG = sumOf(rows, flying, (figures) => figures.massG)
  const cost = costSum(rows, printed)
  const timeS = sumOf(rows, printed, (figures) => figures.timeS)
  const flyingCost = costSum(rows, flying)
  return {
    rows: rows.map((row) => {
      const own = {
        massG: scaleRange(row.figures.massG, flying(row)),
        cost: costSum([row], printed),
        timeS: scaleRange(row.figures.timeS, printed(row)),
      }
      return {
        id: row.id,
        ...own,
        massShare: shareOf(own.massG, massG),
        costShare: shareOf(own.cost, cost),
        timeShare: shareOf(own.timeS, timeS),
      }
    }),
    massG,
    spoolG: sumOf(rows, printed, (figures) => figures.spoolG),
    filamentM: sumOf(rows, printed, (figures) => figures.filamentM),
    cost,
    timeS,
    flyingCost,
    carbon: carbon === null ? null : carbonDifference(massG, flyingCost, carbon),
  }
}

/** Printed mass and cost against a bought carbon frame. */
function carbonDifference(massG: Range, cost: Range, carbon: CarbonFrame): CarbonDifference {
  const more = shiftRange(massG, -carbon.massG)
  return {
    massG: more,
    massShare: carbon.massG > 0 ? scaleRange(more, 1 / carbon.massG) : null,
    cost: shiftRange(cost, -carbon.price),
  }
}

const flying = (row: TotalRow): number => row.quantity
const printed = (row: TotalRow): number => row.quantity + row.spares

function sumOf(
  rows: readonly TotalRow[],
  pieces: (row: TotalRow) => number,
  pick: (figures: PartFigures) => Range,
): Range {
  let low = 0
  let mid = 0
  let high = 0
  for (const row of rows) {
    const range = pick(row.figures)
    low += range.low * pieces(row)
    mid += range.mid * pieces(row)
    high += range.high * pieces(row)
  }
  return { low, mid, high }
}

function costSum(rows: readonly TotalRow[], pieces: (row: TotalRow) => number): CostRange {
  const line = (key: 'filament' | 'electricity' | 'wear' | 'failures'): number =>
    rows.reduce((sum, row) => sum + row.figures.cost[key] * pieces(row), 0)
  return {
    ...sumOf(rows, pieces, (figures) => figures.cost),
    filament: line('filament'),
    electricity: line('electricity'),
    wear: line('wear'),
    failures: line('failures'),
  }
}

function scaleRange(range: Range, factor: number): Range {
  return { low: range.low * factor, mid: range.mid * factor, high: range.high * factor }
}

function shiftRange(range: Range, by: number): Range {
  return { low: range.low + by, mid: range.mid + by, high: range.high + by }
}

function shareOf(own: Range, all: Range): number {
  return all.mid > 0 ? own.mid / all.mid : 0
}
