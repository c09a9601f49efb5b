import { MOST_RUN_PIECES } from '../data/runs.ts'
import type { RunWay } from '../model/runs.ts'
import { eveningsOf } from './eveningPlan.ts'
import { finishOf } from './finish.ts'
import {
  planBeds,
  type PlannedRun,
  type RunPart,
  type RunWorkshop,
  type TimedRun,
} from './planBeds.ts'
import { inStartOrder } from './runOrder.ts'
import { allPrinters } from './runPrinters.ts'
import { dividePieces, passRuns } from './severalPrinters.ts'

/**
 * Divides pieces into print runs, each of one material and one layer height on one printer, and
 * lays each on the bed; every piece must go on one of the beds. What others wait for comes first,
 * see `inOrder`, coupons before all. Null where there are too many pieces to lay.
 *
 * Of several printers it weighs all that goes on one of them on that one, and the pieces spread
 * over them, each also with whole runs passed to the printer that is free first; what suits the way
 * stands.
 */
export function planRuns(
  parts: readonly RunPart[],
  workshop: RunWorkshop,
  way: RunWay = workshop.settings.way,
): readonly PlannedRun[] | null {
  if (parts.reduce((sum, { count }) => sum + count, 0) > MOST_RUN_PIECES) return null
  const printers = allPrinters(workshop)
  const plans = dividePieces(parts, workshop).flatMap((shares) => {
    const laid = shares.flatMap((own, k) => {
      const printer = printers[k]
      return printer === undefined ? [] : planBeds(own, printer, workshop, way)
    })
    return printers.length === 1 ? [laid] : [laid, passRuns(laid, parts, workshop, way)]
  })
  const eveningS = workshop.settings.eveningH * 3600
  const [best] = plans
    .map((runs) => ({ runs, worth: worthOf(runs, way, eveningS) }))
    .toSorted((a, b) => compare(a.worth, b.worth))
  return inPlace(best?.runs ?? [], parts)
}

/** Figures that are better small, the first first. */
function worthOf(runs: readonly TimedRun[], way: RunWay, eveningS: number): readonly number[] {
  const { inTurnS, sideBySideS } = finishOf(runs)
  const last = [Math.round(sideBySideS), inTurnS]
  switch (way) {
    case 'fewest beds':
      return [runs.length, ...last]
    case 'evenings':
      return [eveningCount(runs, eveningS), ...last]
    case 'least loss':
      // To the hundredth of any currency.
      return [Math.round(100 * runs.reduce((sum, { cost }) => sum + cost, 0)), ...last]
  }
}

function eveningCount(runs: readonly TimedRun[], eveningS: number): number {
  const ids = [...new Set(runs.map(({ printerId }) => printerId))]
  const counts = ids.map((id) => {
    const own = runs.filter(({ printerId }) => printerId === id)
    return eveningsOf(
      own.map(({ timeS }, i) => ({ number: i, timeS })),
      eveningS,
    ).length
  })
  return Math.max(0, ...counts)
}

function compare(a: readonly number[], b: readonly number[]): number {
  for (const [i, own] of a.entries()) {
    const off = own - (b[i] ?? 0)
    if (off !== 0) return off
  }
  return 0
}

function inPlace(runs: readonly PlannedRun[], parts: readonly RunPart[]): readonly PlannedRun[] {
  const byId = new Map(parts.map((part) => [part.id, part]))
  const ordered = runs.map((run) => {
    const ids = [...new Set(run.spots.map(({ partId }) => partId))]
    return {
      run,
      printerId: run.printerId,
      timeS: run.timeS,
      waits: ids.reduce((sum, id) => sum + (byId.get(id)?.waits ?? 0), 0),
      isCoupon: ids.some((id) => byId.get(id)?.isCoupon === true),
    }
  })
  return inStartOrder(ordered).map(({ run: { printerId, materialId, layerMm, spots, timeS } }) => ({
    printerId,
    materialId,
    layerMm,
    spots,
    timeS,
  }))
}
