import { drawLines } from '../core/drawing/drawLines.ts'
import type { Motion } from '../core/drawing/types.ts'
import { boxOfMesh } from '../core/mesh/boxOfMesh.ts'
import { placeMesh } from '../core/mesh/pose.ts'
import type { Mesh } from '../core/model/mesh.ts'
import { POSE_AS_DRAWN } from '../core/model/settings.ts'
import { unitToMm } from '../core/model/units.ts'
import { outlineOf } from '../core/runs/outline.ts'
import { bedOf, planRuns, type RunPart } from '../core/runs/planRuns.ts'
import type { PieceOutline, Unfit } from '../core/runs/types.ts'
import { unfitOf } from '../core/runs/unfit.ts'
import { takingOf, type MeshShelf } from './meshShelf.ts'
import type { PiecePlan, RunsAnswer, RunsAsk, RunsPart } from './protocol.ts'

/** Lays pieces into runs every way there is, and draws each part from above once. Throws PreweighError. */
export async function layRuns({ parts, workshop }: RunsAsk, shelf: MeshShelf): Promise<RunsAnswer> {
  const bed = bedOf(workshop.printer, workshop.settings)
  const laid: RunPart[] = []
  const unfit: Unfit[] = []
  const plans: Record<string, PiecePlan> = {}
  for (const part of parts) {
    const { source, unit, supportAngleDeg, ...rest } = part
    const outward = shelf.outward(await shelf.read(source), takingOf(source, unit))
    const seen = lookFromAbove(outward, part)
    if (seen === null) continue
    const { outline, plan } = seen
    if (plan !== null) plans[part.id] = plan
    const drawn = placeMesh(outward, unitToMm(unit), POSE_AS_DRAWN)
    const why = unfitOf(part.id, drawn, outline, { brimMm: part.brimMm, supportAngleDeg }, bed)
    if (why === null) laid.push({ ...rest, outline })
    else unfit.push(why)
  }
  const fewest = planRuns(laid, workshop, 'fewest beds')
  const evenings = planRuns(laid, workshop, 'evenings')
  const leastLoss = planRuns(laid, workshop, 'least loss')
  const ways =
    fewest === null || evenings === null || leastLoss === null
      ? null
      : { 'fewest beds': fewest, evenings, 'least loss': leastLoss }
  return { ways, unfit, plans }
}

interface SeenFromAbove {
  readonly outline: PieceOutline
  readonly plan: PiecePlan | null
}

/** By mesh and pose: a changed setting asks for the same again. */
const seenOf = new WeakMap<Mesh, { readonly key: string; readonly seen: SeenFromAbove | null }>()

function lookFromAbove(outward: Mesh, { unit, pose }: RunsPart): SeenFromAbove | null {
  const key = [unit, ...pose.rotateDeg].join(' ')
  const known = seenOf.get(outward)
  if (known?.key === key) return known.seen
  const placed = placeMesh(outward, unitToMm(unit), pose)
  const outline = outlineOf(placed)
  const seen = outline && { outline, plan: planOf(placed, outline.areaMm2) }
  seenOf.set(outward, { key, seen })
  return seen
}

const STILL: Motion = [1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1, 0]
/** x to the right and y up the sheet, as on the bed. */
const FROM_ABOVE = { azimuthDeg: 0, elevationDeg: 90 } as const
/** Finer than any screen shows a bed; no larger than this many px a side. */
const PX_A_MM = 3
const MOST_PX = 900

function planOf(mesh: Mesh, areaMm2: number): PiecePlan | null {
  const { min, max } = boxOfMesh(mesh)
  const long = Math.max(max[0] - min[0], max[1] - min[1])
  const scale = Math.min(PX_A_MM, MOST_PX / long)
  const side = (k: 0 | 1): number => Math.ceil((max[k] - min[k]) * scale) + 4
  const sheet = { widthPx: side(0), heightPx: side(1), marginPx: 2, scale }
  const drawing = drawLines([{ item: 'part', mesh, motion: STILL }], FROM_ABOVE, sheet, 2)
  return drawing && { drawing, areaMm2 }
}
