import { RUNS_DEFAULTS } from '../core/data/runs.ts'
import { layerWork } from '../core/figures/hours.ts'
import type { FrameSum } from '../core/frame/types.ts'
import { placeMesh } from '../core/mesh/pose.ts'
import type { Census } from '../core/model/census.ts'
import type { Material, PartFigures, Range } from '../core/model/figures.ts'
import type { Frame, Part } from '../core/model/frame.ts'
import type { Mesh } from '../core/model/mesh.ts'
import { scaleRange } from '../core/model/ranges.ts'
import { POSE_AS_DRAWN, type LaidRecipe } from '../core/model/settings.ts'
import { unitToMm } from '../core/model/units.ts'
import { outlineOf } from '../core/runs/outline.ts'
import { bedOf, planRuns, type RunPart } from '../core/runs/planRuns.ts'
import { tellRuns } from '../core/runs/tellRuns.ts'
import { unfitOf } from '../core/runs/unfit.ts'
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
  /** Of the bed, 0–1, by the shadows of the pieces. */
  readonly bedShare: number
}

export interface FrameRuns {
  readonly runs: readonly RunReport[]
  readonly notes: readonly string[]
}

/** The frame's pieces, spares too, as print runs on its printer. */
export function runsOfFrame(laid: readonly BedPart[], sum: FrameSum, frame: Frame): FrameRuns {
  const { printer, prices } = frame
  const settings = frame.runs ?? RUNS_DEFAULTS
  const bed = bedOf(printer, settings)
  const notes: string[] = []
  const parts = laid.flatMap(({ part, material, figures, recipe, census, outward, placed }) => {
    const outline = outlineOf(placed)
    if (outline === null) return []
    const drawn = placeMesh(outward, unitToMm(part.unit), POSE_AS_DRAWN)
    const unfit = unfitOf(part.id, drawn, outline, part.recipe, bed)
    if (unfit !== null) notes.push(unfitWords(part.name, unfit))
    if (unfit !== null) return []
    const { layerMm, firstLayerMm, brimMm } = recipe
    const { id, mirrored, quantity, spares } = part
    const count = quantity + spares
    const work = layerWork(census, recipe, material, printer)
    const spoolG = figures.spoolG.mid
    return [{ id, count, mirrored, outline, brimMm, material, layerMm, firstLayerMm, work, spoolG }]
  }) satisfies readonly RunPart[]
  const planned = planRuns(parts, { printer, prices, settings })
  if (planned === null)
    return { runs: [], notes: [...notes, 'There are too many pieces to lay into print runs.'] }
  const outlines = new Map(parts.map(({ id, outline }) => [id, outline]))
  const { runs } = tellRuns(planned, sum, outlines, bed)
  return {
    runs: runs.map(({ material, pieces, timeS, massG, bedShare }) => ({
      printer: printer.name,
      material,
      pieces: pieces.map(({ part, count }) => ({ part, count })),
      hours: scaleRange(timeS, 1 / 3600),
      massG,
      bedShare,
    })),
    notes,
  }
}
