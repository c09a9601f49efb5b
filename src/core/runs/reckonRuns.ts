import { costOf, type CostFigure } from '../figures/cost.ts'
import type { LayerWork } from '../figures/layerSeconds.ts'
import { mixDoubts, rangeOfFigure } from '../doubt/figureDoubt.ts'
import type { FigureDoubt } from '../model/doubt.ts'
import type { Material, PartFigures, Printer, Range } from '../model/figures.ts'
import { addRanges, scaleRange, ZERO_RANGE } from '../model/ranges.ts'
import type { PieceShare, Spot } from '../model/runs.ts'
import { onPrinter } from '../doubt/factors.ts'
import type { LaidRun } from './handRuns.ts'
import type { RunWorkshop } from './planBeds.ts'
import { printerOf } from './runPrinters.ts'
import { runSeconds, waysOf, type Ways } from './runSeconds.ts'

/** A part as its pieces are reckoned in their runs. */
export interface ReckonedPart {
  readonly id: string
  /** All that are printed, spares with them. */
  readonly pieces: number
  readonly material: Material
  /** Of one piece printed by itself. */
  readonly figures: Pick<PartFigures, 'spoolG' | 'timeS' | 'cost' | 'doubt'>
  /**
   * By printer; null while its layers are not counted: its pieces are then reckoned each by itself.
   */
  readonly workOn: ((printer: Printer) => LayerWork) | null
}

/** A run in the figures of now, before what scale and clock taught. */
export interface ReckonedRun {
  readonly printerId: string
  readonly materialId: string
  readonly layerMm: number
  /** Of the pieces there still are. */
  readonly spots: readonly Spot[]
  readonly timeS: number
  /** A good one, with what failed ones before it cost. */
  readonly cost: number
  /** What is lost when it fails at the end. */
  readonly lostAtEnd: number
  /** What each of a part's pieces in it has of its hours and its cost. */
  readonly pieces: readonly RunPieces[]
}

export interface RunPieces {
  readonly partId: string
  readonly count: number
  readonly timeS: number
  readonly timeDoubt: FigureDoubt
  readonly cost: CostFigure
}

export interface ReckonedRuns {
  readonly runs: readonly ReckonedRun[]
  /** By part, of those that have pieces in a run; the others are printed one by one. */
  readonly shares: ReadonlyMap<string, PieceShare>
}

/**
 * Runs as they lie, with the hours and money of the present recipes: where pieces lie depends on
 * neither infill nor prices. Pieces that lie in no run are printed by themselves, on the frame's
 * own printer.
 */
export function reckonRuns(
  parts: readonly ReckonedPart[],
  planned: readonly LaidRun[],
  workshop: RunWorkshop,
): ReckonedRuns {
  const byId = new Map(parts.map((part) => [part.id, part]))
  const left = new Map(parts.map(({ id, pieces }) => [id, pieces]))
  const runs = planned.flatMap((run): ReckonedRun[] => {
    const spots = run.spots.filter(({ partId }) => {
      const more = left.get(partId) ?? 0
      if (more <= 0 || byId.get(partId)?.workOn === null) return false
      left.set(partId, more - 1)
      return true
    })
    if (spots.length === 0) return []
    const kept = spots.length === run.spots.length ? run.spots : spots
    return [reckonRun({ ...run, spots: kept }, byId, workshop)]
  })
  const inRuns = new Map<string, RunPieces[]>()
  for (const run of runs) {
    for (const own of run.pieces) {
      inRuns.set(own.partId, [...(inRuns.get(own.partId) ?? []), own])
    }
  }
  const shares = new Map<string, PieceShare>()
  for (const [id, own] of inRuns) {
    const part = byId.get(id)
    if (part !== undefined) shares.set(id, shareOf(part, own, left.get(id) ?? 0))
  }
  return { runs, shares }
}

function reckonRun(
  { printerId, materialId, layerMm, spots }: LaidRun,
  byId: ReadonlyMap<string, ReckonedPart>,
  workshop: RunWorkshop,
): ReckonedRun {
  const { prices, settings } = workshop
  const { order } = settings
  const printer = printerOf(workshop, printerId)
  const isOwn = printer.id === workshop.printer.id
  const laid = spots.flatMap(({ partId, xMm, yMm }) => {
    const part = byId.get(partId)
    if (part === undefined || part.workOn === null) return []
    return [{ part, work: part.workOn(printer), xMm, yMm }]
  })
  const heights = laid.map(({ work }) => work.ownS.length)
  const ways = rememberWays(spots, [printer, order, ...heights], () => waysOf(laid, printer, order))
  const timeS = runSeconds(laid, printer, order, ways) * (printer.clockFactor ?? 1)
  const aloneS = laid.reduce((sum, { part }) => sum + part.figures.timeS.mid, 0)
  const counts = new Map<ReckonedPart, number>()
  for (const { part } of laid) counts.set(part, (counts.get(part) ?? 0) + 1)
  const pieces = [...counts].map(([part, count]): RunPieces => {
    const { spoolG, timeS: alone, doubt } = part.figures
    const ownS = aloneS > 0 ? (timeS * alone.mid) / aloneS : timeS / laid.length
    const timeDoubt = isOwn ? doubt.time : onPrinter(doubt.time, workshop.printer, printer)
    const doubts = { spool: doubt.spool, time: timeDoubt }
    const cost = costOf(spoolG.mid, ownS, doubts, part.material, printer, prices, timeS)
    return { partId: part.id, count, timeS: ownS, timeDoubt, cost }
  })
  const sum = (of: (cost: CostFigure) => number): number =>
    pieces.reduce((total, { count, cost }) => total + count * of(cost), 0)
  return {
    printerId: printer.id,
    materialId,
    layerMm,
    spots,
    timeS,
    cost: sum(({ mid }) => mid),
    lostAtEnd: sum(({ filament, electricity, wear }) => filament + electricity + wear),
    pieces,
  }
}

/** The mean of a part's pieces, `left` of them printed by themselves. */
function shareOf(
  { figures }: ReckonedPart,
  inRuns: readonly RunPieces[],
  left: number,
): PieceShare {
  const { timeS: alone, cost, doubt } = figures
  const all = [
    ...inRuns.map((own) => ({ ...own, doubt: own.cost.doubt })),
    ...(left > 0
      ? [{ count: left, timeS: alone.mid, timeDoubt: doubt.time, cost, doubt: doubt.cost }]
      : []),
  ]
  const pieces = all.reduce((sum, { count }) => sum + count, 0)
  const eachS = all.reduce((sum, { count, timeS }) => sum + count * timeS, 0) / pieces
  const each = all.reduce<Range>(
    (sum, one) => addRanges(sum, scaleRange(one.cost, one.count / pieces)),
    ZERO_RANGE,
  )
  const ofCost = all.map(({ count, cost: { mid }, doubt: own }) => ({
    share: each.mid > 0 ? (count * mid) / pieces / each.mid : 0,
    doubt: own,
  }))
  const ofTime = all.map(({ count, timeS, timeDoubt }) => ({
    share: eachS > 0 ? (count * timeS) / pieces / eachS : 0,
    doubt: timeDoubt,
  }))
  const timeDoubt = ofOnePart(ofTime)
  return {
    timeS: rangeOfFigure(eachS, timeDoubt),
    timeDoubt,
    cost: each,
    costDoubt: ofOnePart(ofCost),
  }
}

/** Pieces of one part are off together. */
function ofOnePart(
  shares: readonly { readonly share: number; readonly doubt: FigureDoubt }[],
): FigureDoubt {
  return {
    shared: mixDoubts(shares).shared,
    own: shares.reduce((sum, { share, doubt: { own } }) => sum + share * own, 0),
  }
}

const known = new WeakMap<
  readonly Spot[],
  { readonly key: readonly unknown[]; readonly ways: readonly Ways[] }
>()

/** Ways are long to find, and no infill changes them. */
function rememberWays(
  spots: readonly Spot[],
  key: readonly unknown[],
  make: () => readonly Ways[],
): readonly Ways[] {
  const before = known.get(spots)
  if (before?.key.length === key.length && before.key.every((one, i) => one === key[i])) {
    return before.ways
  }
  const ways = make()
  known.set(spots, { key, ways })
  return ways
}
