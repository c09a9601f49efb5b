import { RUNS_DEFAULTS } from '../core/data/runs.ts'
import { layerWork } from '../core/figures/hours.ts'
import type { FrameSum } from '../core/frame/types.ts'
import { placeMesh } from '../core/mesh/pose.ts'
import type { Census } from '../core/model/census.ts'
import type { LayerWork } from '../core/figures/layerSeconds.ts'
import type { Material, PartFigures, Printer, Range } from '../core/model/figures.ts'
import type { Frame, Part } from '../core/model/frame.ts'
import type { Mesh } from '../core/model/mesh.ts'
import type { Spool } from '../core/model/spools.ts'
import { scaleRange } from '../core/model/ranges.ts'
import { POSE_AS_DRAWN, type LaidRecipe } from '../core/model/settings.ts'
import { unitToMm } from '../core/model/units.ts'
import { outlineOf } from '../core/runs/outline.ts'
import { assignSpools, drinksWater } from '../core/runs/assignSpools.ts'
import { finishOf } from '../core/runs/finish.ts'
import { handRuns, restOf } from '../core/runs/handRuns.ts'
import type { RunPart } from '../core/runs/planBeds.ts'
import { planRuns } from '../core/runs/planRuns.ts'
import { allPrinters, bedOf } from '../core/runs/runPrinters.ts'
import { reckonRuns, type ReckonedPart, type ReckonedRuns } from '../core/runs/reckonRuns.ts'
import { tellRuns } from '../core/runs/tellRuns.ts'
import type { PieceOutline } from '../core/runs/types.ts'
import { unfitOf } from '../core/runs/unfit.ts'
import { waitingFor } from '../core/runs/waiting.ts'
import { unfitWords } from '../core/runs/sayings.ts'

/** A counted part with its mesh, as drawn and as it lies. */
export interface BedPart {
  readonly part: Part
  readonly material: Material
  readonly figures: PartFigures
  readonly recipe: LaidRecipe
  readonly census: Census
  readonly outward: Mesh
  readonly placed: Mesh
}

export interface RunReport {
  readonly printer: string
  readonly material: string
  readonly pieces: readonly { readonly part: string; readonly count: number }[]
  readonly hours: Range
  readonly massG: number
  /** Off the spool, supports and brims with it. */
  readonly spoolG: Range
  /**
   * Of those named, from 1, the one that finishes it; null where none does, left out where none was
   * named.
   */
  readonly spool?: number | null
  /** Of the bed, 0–1, by the shadows of the pieces. */
  readonly bedShare: number
  /** The plastic takes up water from the air within a night or two. */
  readonly dryFirst: boolean
}

export interface ShelfReport {
  /** `leftG` can still be printed after all runs; `material` by its id. */
  readonly spools: readonly {
    readonly spool: number
    readonly material: string
    readonly leftG: number
  }[]
  /** Of runs that no spool finishes. */
  readonly toBuy: readonly { readonly material: string; readonly neededG: number }[]
}

export interface RunsReport {
  readonly runs: readonly RunReport[]
  /** Hours until the last run is done: printers one after the other, and side by side. */
  readonly finish: { readonly inTurnHours: number; readonly sideBySideHours: number }
  readonly shelf: ShelfReport | null
}

/** The frame's pieces in print runs, before anything of them is told. */
export interface LaidFrame extends ReckonedRuns {
  readonly outlines: ReadonlyMap<string, PieceOutline>
  readonly notes: readonly string[]
}

/** The frame's pieces, spares too, laid into print runs on its printer. */
export function layFrame(counted: readonly BedPart[], frame: Frame): LaidFrame {
  const { printer, printers = [], prices } = frame
  const settings = frame.runs ?? RUNS_DEFAULTS
  const all = allPrinters(frame)
  const beds = all.map((one) => bedOf(one, settings))
  const waiting = waitingFor(frame.aircraft.joints)
  const notes: string[] = []
  const laid: RunPart[] = []
  const reckoned: ReckonedPart[] = []
  for (const { part, material, figures, recipe, census, outward, placed } of counted) {
    const outline = outlineOf(placed)
    if (outline === null) continue
    const { id, mirrored, quantity, spares } = part
    const pieces = quantity + spares
    const works = new Map(
      all.map((one) => [one, layerWork(census, recipe, material, one)] as const),
    )
    const workOn = (one: Printer): LayerWork =>
      works.get(one) ?? layerWork(census, recipe, material, one)
    reckoned.push({ id, pieces, material, figures, workOn })
    const drawn = placeMesh(outward, unitToMm(part.unit), POSE_AS_DRAWN)
    const unfit = unfitOf(id, drawn, outline, part.recipe, beds)
    if (unfit !== null) notes.push(unfitWords(part.name, unfit))
    if (unfit !== null) continue
    const { layerMm, firstLayerMm, brimMm } = recipe
    const how = { mirrored, outline, brimMm, material, layerMm, firstLayerMm }
    const onEach = Object.fromEntries(all.map((one) => [one.id, workOn(one)]))
    const waits = waiting.get(id) ?? 0
    const isCoupon = settings.coupons?.includes(id) === true
    const { mid: spoolG } = figures.spoolG
    laid.push({ id, count: pieces, spoolG, waits, isCoupon, works: onEach, ...how })
  }
  const workshop = { printer, printers, prices, settings }
  const byHand = settings.byHand ?? []
  const rest = planRuns(restOf(laid, byHand), workshop)
  if (rest === null) notes.push('There are too many pieces to lay into print runs.')
  const planned = [...handRuns(byHand, laid, workshop), ...(rest ?? [])]
  const outlines = new Map(laid.map(({ id, outline }) => [id, outline]))
  return { ...reckonRuns(reckoned, planned, workshop), outlines, notes }
}

/** Runs in figures, after what scale and clock taught, and the spools they are printed from. */
export function runReports(
  { runs, outlines }: LaidFrame,
  sum: FrameSum,
  frame: Frame,
  spools: readonly Spool[] | null,
): RunsReport {
  const told = tellRuns(runs, sum, outlines, frame)
  const times = told.map(({ printer, timeS }) => ({ printerId: printer.id, timeS: timeS.mid }))
  const { inTurnS, sideBySideS } = finishOf(times)
  const plan = spools && assignSpools(told, spools)
  return {
    runs: told.map(
      ({ printer, material, materialId, pieces, timeS, massG, spoolG, bedShare }, i) => ({
        printer: printer.name,
        material,
        pieces: pieces.map(({ part, count }) => ({ part, count })),
        hours: scaleRange(timeS, 1 / 3600),
        massG: massG.mid,
        spoolG,
        ...(plan === null ? {} : { spool: Number(plan.runs[i] ?? 0) || null }),
        bedShare,
        dryFirst: drinksWater(materialId),
      }),
    ),
    finish: { inTurnHours: inTurnS / 3600, sideBySideHours: sideBySideS / 3600 },
    shelf: plan && {
      spools: (spools ?? []).map(({ id, materialId }) => ({
        spool: Number(id),
        material: materialId,
        leftG: plan.leftG.get(id) ?? 0,
      })),
      toBuy: plan.toBuy.map(({ materialId, neededG }) => ({ material: materialId, neededG })),
    },
  }
}
