import { wholeHoles } from '../mesh/holes/wholeHoles.ts'
import { findOverhang } from '../mesh/overhang.ts'
import { boxOfMesh } from '../mesh/boxOfMesh.ts'
import type { Bounds, Mesh } from '../model/mesh.ts'
import { drawProjection } from './drawLines.ts'
import { groupHoles, type HoleGroup } from './groupHoles.ts'
import { project } from './project.ts'
import { shadowOf, type Shadow } from './shadowOf.ts'
import type { LineDrawing, Motion, Sheet, View } from './types.ts'
import { viewAxes } from './viewAxes.ts'

/** One part in lines, with what is worth showing on it. */
export interface PartLook {
  readonly drawing: LineDrawing
  /** Of the part as it is placed, mm. */
  readonly boundsMm: Bounds
  readonly holes: readonly HoleGroup[]
  /** What faces down more than holds itself, seen through the part, and how much of it there is. */
  readonly overhang: Shadow & { readonly areaMm2: number }
  readonly zones: readonly Shadow[]
}

const STILL: Motion = [1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1, 0]
const DOWN = [0, 0, -1] as const

/**
 * Draws a placed part (mm, lowest z at 0, faced outwards) and finds its holes, what hangs over, and
 * where its zones are. Null for a mesh without a size.
 */
export function lookAtPart(
  mesh: Mesh,
  zones: readonly Mesh[],
  view: View,
  sheet: Sheet,
  supportAngleDeg: number,
): PartLook | null {
  const piece = (own: Mesh) => ({ item: 'part', mesh: own, motion: STILL })
  const projection = project([piece(mesh)], view, sheet)
  if (projection === null) return null
  const { drawing, painted } = drawProjection(projection, view, sheet, SAMPLES)
  // Whatever else is drawn takes the part's own place and scale.
  const { right, up } = viewAxes(view)
  const acrossMm = (sheet.widthPx / 2 - drawing.originPx[0]) / drawing.scale
  const upMm = (drawing.originPx[1] - sheet.heightPx / 2) / drawing.scale
  const middleMm = [0, 1, 2].map((k) => acrossMm * right[k]! + upMm * up[k]!) as [
    number,
    number,
    number,
  ]
  const same: Sheet = { ...sheet, scale: drawing.scale, middleMm }
  const { triangles, areaMm2 } = findOverhang(mesh, DOWN, supportAngleDeg)
  const hanging: Mesh = {
    positions: mesh.positions,
    indices: Uint32Array.from(
      triangles.flatMap((t) => [0, 1, 2].map((corner) => mesh.indices[3 * t + corner]!)),
    ),
  }
  return {
    drawing,
    boundsMm: boxOfMesh(mesh),
    holes: groupHoles(wholeHoles(mesh), drawing, painted),
    overhang: { ...shadowOf(piece(hanging), view, same), areaMm2 },
    zones: zones.map((zone) => shadowOf(piece(zone), view, same)),
  }
}

/** Along each side of a px. */
const SAMPLES = 2
