import { NIGHT_H } from '../data/runs.ts'
import { costOf } from '../figures/cost.ts'
import { layersTime, type LayerWork } from '../figures/layerSeconds.ts'
import type { FigureDoubt } from '../model/doubt.ts'
import type { Material, Prices, Printer } from '../model/figures.ts'
import type { RunSettings, RunWay, Spot } from '../model/runs.ts'
import { nest } from './nest.ts'
import { bedOf, type Printers } from './runPrinters.ts'
import { runSeconds } from './runSeconds.ts'
import type { LaidPart } from './types.ts'

/** A part with all that decides which others it may share a bed with. */
export interface RunPart extends LaidPart {
  readonly material: Material
  readonly layerMm: number
  readonly firstLayerMm: number
  /** Of one piece, by the id of each printer there is. */
  readonly works: Readonly<Record<string, LayerWork>>
  /** Of one piece, off the spool. */
  readonly spoolG: number
  /** How many other parts wait for it. */
  readonly waits: number
  /** Printed before all that are none. */
  readonly isCoupon?: boolean
}

/** What is printed at once. */
export interface PlannedRun {
  readonly printerId: string
  readonly materialId: string
  readonly layerMm: number
  readonly spots: readonly Spot[]
  /**
   * As the printer's clock had it when it was laid, before what scale and clock taught of its
   * parts.
   */
  readonly timeS: number
}

/** A planned run with what it is compared by. */
export interface TimedRun extends PlannedRun {
  /** A good one, with what failed ones before it cost. */
  readonly cost: number
}

export interface RunWorkshop extends Printers {
  readonly prices: Prices
  readonly settings: RunSettings
}

const CERTAIN: FigureDoubt = { shared: [], own: 0 }

/**
 * Runs of these pieces on one printer, each of one material and one layer height; all must go on
 * its bed.
 */
export function planBeds(
  parts: readonly RunPart[],
  printer: Printer,
  workshop: RunWorkshop,
  way: RunWay,
): readonly TimedRun[] {
  const groups = new Map<string, RunPart[]>()
  for (const part of parts) {
    if (part.count === 0) continue
    const { material, layerMm, firstLayerMm, isCoupon = false } = part
    const key = [material.id, layerMm, firstLayerMm, isCoupon].join(' ')
    groups.set(key, [...(groups.get(key) ?? []), part])
  }
  return [...groups.values()].flatMap((group) => planGroup(group, printer, workshop, way))
}

function planGroup(
  parts: readonly RunPart[],
  printer: Printer,
  workshop: RunWorkshop,
  way: RunWay,
): readonly TimedRun[] {
  const { settings } = workshop
  const byId = new Map(parts.map((part) => [part.id, part]))
  const timed = (spots: readonly Spot[]): TimedRun => timedRun(spots, byId, printer, workshop)
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
  const lay = (joined: (spots: readonly Spot[]) => boolean): readonly TimedRun[] =>
    nest(parts, bedOf(printer, settings), { gapMm, joins: joined, ...passes }).map((spots) => {
      const onIt = spots.map((spot) =>
        printer.id === workshop.printer.id ? spot : { ...spot, printerId: printer.id },
      )
      return timed(onIt)
    })
  const first = lay(joins)
  if (way !== 'least loss') return first
  // Loss grows faster than hours: about as many runs, of even length, may lose less.
  const evenS = evenLength(parts, printer)
  const others = [first.length - 1, first.length, first.length + 1]
    .filter((count) => count > 0)
    .map((count) => lay((spots) => clears(spots) && timed(spots).timeS <= evenS(count)))
  return [first, ...others].toSorted((a, b) => costOfAll(a) - costOfAll(b))[0] ?? first
}

function costOfAll(runs: readonly TimedRun[]): number {
  return runs.reduce((sum, { cost }) => sum + cost, 0)
}

/** Over its even share a run may be so much longer, for the ways from piece to piece. */
const EVEN_SLACK = 1.02

/** How long each of so many runs takes where they are of one length. */
function evenLength(parts: readonly RunPart[], printer: Printer): (count: number) => number {
  const { startS, leastLayerS, clockFactor } = printer
  const allS = parts.reduce((sum, { count, works }) => {
    const work = works[printer.id]
    return work === undefined ? sum : sum + count * layersTime(work, leastLayerS)
  }, 0)
  return (count) => (startS + (EVEN_SLACK * allS) / count) * (clockFactor ?? 1)
}

function timedRun(
  spots: readonly Spot[],
  byId: ReadonlyMap<string, RunPart>,
  printer: Printer,
  { prices, settings }: RunWorkshop,
): TimedRun {
  const pieces = spots.flatMap((spot) => {
    const part = byId.get(spot.partId)
    const work = part?.works[printer.id]
    return part === undefined || work === undefined
      ? []
      : [{ part, work, xMm: spot.xMm, yMm: spot.yMm }]
  })
  const timeS = runSeconds(pieces, printer, settings.order) * (printer.clockFactor ?? 1)
  const spoolG = pieces.reduce((sum, { part }) => sum + part.spoolG, 0)
  const first = pieces[0]?.part
  const material = first?.material
  const doubt = { spool: CERTAIN, time: CERTAIN }
  const cost = material && costOf(spoolG, timeS, doubt, material, printer, prices)
  return {
    printerId: printer.id,
    materialId: material?.id ?? '',
    layerMm: first?.layerMm ?? 0,
    spots,
    timeS,
    cost: cost?.mid ?? 0,
  }
}
