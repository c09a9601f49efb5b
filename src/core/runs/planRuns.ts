import { MOST_RUN_PIECES, NIGHT_H } from '../data/runs.ts'
import { costOf } from '../figures/cost.ts'
import type { LayerWork } from '../figures/layerSeconds.ts'
import type { FigureDoubt } from '../model/doubt.ts'
import type { Material, Prices, Printer } from '../model/figures.ts'
import type { RunSettings, RunWay } from '../model/runs.ts'
import { nest } from './nest.ts'
import { runSeconds } from './runSeconds.ts'
import type { Bed, LaidPart, Spot } from './types.ts'

/** A part with all that decides which others it may share a bed with. */
export interface RunPart extends LaidPart {
  readonly material: Material
  readonly layerMm: number
  readonly firstLayerMm: number
  /** Of one piece. */
  readonly work: LayerWork
  /** Of one piece, off the spool. */
  readonly spoolG: number
}

/** What is printed at once. */
export interface PlannedRun {
  readonly materialId: string
  readonly layerMm: number
  readonly spots: readonly Spot[]
  /** As the printer's clock has it, before what scale and clock taught of its parts. */
  readonly timeS: number
  /** A good one, with what failed ones before it cost. */
  readonly cost: number
  /** What is lost when it fails at the end. */
  readonly lostAtEnd: number
}

export interface RunWorkshop {
  readonly printer: Printer
  readonly prices: Prices
  readonly settings: RunSettings
}

const CERTAIN: FigureDoubt = { shared: [], own: 0 }

/** The bed of a printer as runs use it. */
export function bedOf({ bedMm }: Printer, { marginMm }: RunSettings): Bed {
  const [widthMm, depthMm, heightMm] = bedMm
  return { widthMm, depthMm, heightMm, marginMm }
}

/**
 * Divides pieces into print runs, each of one material and one layer height, and lays each on the
 * bed; all must go on it. Short runs first, so that what does not fit shows early and long ones end
 * the day. Null where there are too many pieces to lay.
 */
export function planRuns(
  parts: readonly RunPart[],
  workshop: RunWorkshop,
  way: RunWay = workshop.settings.way,
): readonly PlannedRun[] | null {
  if (parts.reduce((sum, { count }) => sum + count, 0) > MOST_RUN_PIECES) return null
  const groups = new Map<string, RunPart[]>()
  for (const part of parts) {
    const key = [part.material.id, part.layerMm, part.firstLayerMm].join(' ')
    groups.set(key, [...(groups.get(key) ?? []), part])
  }
  return [...groups.values()]
    .flatMap((group) => planGroup(group, workshop, way))
    .toSorted((a, b) => a.timeS - b.timeS)
}

function planGroup(
  parts: readonly RunPart[],
  workshop: RunWorkshop,
  way: RunWay,
): readonly PlannedRun[] {
  const { printer, settings } = workshop
  const byId = new Map(parts.map((part) => [part.id, part]))
  const timed = (spots: readonly Spot[]): PlannedRun => timedRun(spots, byId, workshop)
  const inTurn = settings.order === 'one at a time'
  const clears = (spots: readonly Spot[]): boolean => {
    if (!inTurn) return true
    const tall = spots.filter(
      ({ partId }) => (byId.get(partId)?.outline.heightMm ?? 0) > settings.underHeadMm,
    )
    // The one that is printed last may be as tall as it likes.
    return tall.length <= 1
  }
  const eveningS = settings.eveningH * 3600
  const inTime = (spots: readonly Spot[]): boolean => {
    const alone = spots.map((spot) => timed([spot]).timeS)
    const limitS = alone.some((timeS) => timeS > eveningS) ? NIGHT_H * 3600 : eveningS
    return timed(spots).timeS <= limitS
  }
  const isCheaper = (spots: readonly Spot[]): boolean =>
    timed(spots).cost <= timed(spots.slice(0, -1)).cost + timed(spots.slice(-1)).cost
  const joins = (spots: readonly Spot[]): boolean =>
    clears(spots) &&
    (way !== 'evenings' || inTime(spots)) &&
    (way !== 'least loss' || isCheaper(spots))
  const gapMm = inTurn ? Math.max(settings.gapMm, settings.headMm) : settings.gapMm
  const passes = way === 'fewest beds' ? {} : { passes: 4 }
  return nest(parts, bedOf(printer, settings), { gapMm, joins, ...passes }).map(timed)
}

function timedRun(
  spots: readonly Spot[],
  byId: ReadonlyMap<string, RunPart>,
  { printer, prices, settings }: RunWorkshop,
): PlannedRun {
  const pieces = spots.flatMap((spot) => {
    const part = byId.get(spot.partId)
    return part === undefined ? [] : [{ part, work: part.work, xMm: spot.xMm, yMm: spot.yMm }]
  })
  const timeS = runSeconds(pieces, printer, settings.order) * (printer.clockFactor ?? 1)
  const spoolG = pieces.reduce((sum, { part }) => sum + part.spoolG, 0)
  const first = pieces[0]?.part
  const material = first?.material
  const doubt = { spool: CERTAIN, time: CERTAIN }
  const cost = material && costOf(spoolG, timeS, doubt, material, printer, prices)
  return {
    materialId: material?.id ?? '',
    layerMm: first?.layerMm ?? 0,
    spots,
    timeS,
    cost: cost?.mid ?? 0,
    lostAtEnd: cost === undefined ? 0 : cost.filament + cost.electricity + cost.wear,
  }
}
