import { findAnchors } from './findAnchors.ts'
import { paint } from './paint.ts'
import { project } from './project.ts'
import { traceRegions } from './traceRegions.ts'
import type { Anchors, DrawnPiece, Sheet, View } from './types.ts'

/** All that a piece takes up in a view, hidden or not. */
export interface Shadow {
  /** Closed SVG path data, px; empty where that is nothing, as of a face seen edge-on. */
  readonly path: string
  /** Where a leader line may start. */
  readonly anchors: Anchors | null
}

const NOTHING: Shadow = { path: '', anchors: null }

export function shadowOf(piece: DrawnPiece, view: View, sheet: Sheet): Shadow {
  if (piece.mesh.indices.length === 0) return NOTHING
  const projection = project([piece], view, sheet)
  if (projection === null) return NOTHING
  const painted = paint(projection, sheet.widthPx, sheet.heightPx, 1)
  const label = painted.label.map((own) => (own === 0 ? 0 : 1))
  const flat = { ...painted, label }
  const path = traceRegions(flat).get(1)
  const anchors = findAnchors(flat, 1)[0]?.anchors ?? null
  return path === undefined ? NOTHING : { path, anchors }
}
