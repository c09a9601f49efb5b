import { drawLines } from '../core/drawing/drawLines.ts'
import type { Motion } from '../core/drawing/types.ts'
import { boxOfMesh } from '../core/mesh/boxOfMesh.ts'
import { placeMesh } from '../core/mesh/pose.ts'
import type { Mesh } from '../core/model/mesh.ts'
import { POSE_AS_DRAWN } from '../core/model/settings.ts'
import { unitToMm } from '../core/model/units.ts'
import { outlineOf } from '../core/runs/outline.ts'
import type { RunPart } from '../core/runs/planBeds.ts'
import { planRuns } from '../core/runs/planRuns.ts'
import { allPrinters, bedOf } from '../core/runs/runPrinters.ts'
import type { PieceOutline, Unfit } from '../core/runs/types.ts'
import { unfitOf } from '../core/runs/unfit.ts'
import { takingOf, type MeshShelf } from './meshShelf.ts'
import type { PiecePlan, RunsAnswer, RunsAsk, RunsPart } from './asks/frameAsks.ts'

/**
 * Lays pieces into runs, each way that is asked for, and draws each part from above once. Throws
 * PreweighError.
 */
export async function layRuns(
  { parts, workshop, ways, draws }: RunsAsk,
  shelf: MeshShelf,
): Promise<RunsAnswer> {
  const beds = allPrinters(workshop).map((printer) => bedOf(printer, workshop.settings))
  const laid: RunPart[] = []
  const unfit: Unfit[] = []
  const plans: Record<string, PiecePlan> = {}
  for (const part of parts) {
    const { source, unit, supportAngleDeg, ...rest } = part
    const outward = shelf.outward(await shelf.read(source), takingOf(source, unit))
    const seen = lookFromAbove(outward, part)
    if (seen === null) continue
    const { outline } = seen
    const plan = draws ? seen.plan() : null
    if (plan !== null) plans[part.id] = structuredClone(plan)
    const drawn = placeMesh(outward, unitToMm(unit), POSE_AS_DRAWN)
    const why = unfitOf(part.id, drawn, outline, { brimMm: part.brimMm, supportAngleDeg }, beds)
    if (why === null) laid.push({ ...rest, outline })
    else unfit.push(why)
  }
  const planned = ways.flatMap((way) => {
    const runs = planRuns(laid, workshop, way)
    return runs === null ? [] : [[way, runs] as const]
  })
  return { ways: Object.fromEntries(planned), unfit, plans }
}

interface SeenFromAbove {
  readonly outline: PieceOutline
  /** Drawn when it is first asked for. */
  readonly plan: () => PiecePlan | null
}

/**
 * By mesh and pose: a changed setting asks for the same again. What leaves is a copy, since an
 * answer takes its buffers along.
 */
const seenOf = new WeakMap<Mesh, { readonly key: string; readonly seen: SeenFromAbove | null }>()

function lookFromAbove(outward: Mesh, { unit, pose }: RunsPart): SeenFromAbove | null {
  const key = [unit, ...pose.rotateDeg].join(' ')
  const known = seenOf.get(outward)
  if (known?.key === key) return known.seen
  const placed = placeMesh(outward, unitToMm(unit), pose)
  const outline = outlineOf(placed)
  let plan: PiecePlan | null | undefined
  const seen = outline && {
    outline,
    plan: () => (plan === undefined ? (plan = planOf(placed, outline)) : plan),
  }
  seenOf.set(outward, { key, seen })
  return seen
}

const STILL: Motion = [1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1, 0]
/** x to the right and y up the sheet, as on the bed. */
const FROM_ABOVE = { azimuthDeg: 0, elevationDeg: 90 } as const
/** Finer than any screen shows a bed; no larger than this many px a side. */
const PX_A_MM = 3
const MOST_PX = 900

function planOf(mesh: Mesh, outline: PieceOutline): PiecePlan | null {
  const { min, max } = boxOfMesh(mesh)
  const long = Math.max(max[0] - min[0], max[1] - min[1])
  const scale = Math.min(PX_A_MM, MOST_PX / long)
  const side = (k: 0 | 1): number => Math.ceil((max[k] - min[k]) * scale) + 4
  const sheet = { widthPx: side(0), heightPx: side(1), marginPx: 2, scale }
  const drawing = drawLines([{ item: 'part', mesh, motion: STILL }], FROM_ABOVE, sheet, 2)
  return drawing && { drawing, outline }
}
