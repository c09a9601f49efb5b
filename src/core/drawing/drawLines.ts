import { chainPath } from './chain.ts'
import { findAnchors } from './findAnchors.ts'
import { ink } from './ink.ts'
import { paint, type Painted } from './paint.ts'
import { project, type Projection } from './project.ts'
import { traceRegions } from './traceRegions.ts'
import type { DrawnPiece, LineDrawing, Sheet, View } from './types.ts'

/**
 * Draws pieces as engineers do: outlines and edges that are seen as lines, faces in four flat
 * tones, hidden lines left out (ISO 128). What is seen is settled on a grid of samples; lines keep
 * the exact places of their ends.
 *
 * @param samples along each side of a px: 2 for a drawing to keep, 1 while it turns.
 * @returns null when there is nothing to draw.
 */
export function drawLines(
  pieces: readonly DrawnPiece[],
  view: View,
  sheet: Sheet,
  samples: 1 | 2 | 3 = 2,
): LineDrawing | null {
  const projection = project(pieces, view, sheet)
  return projection === null ? null : drawProjection(projection, view, sheet, samples).drawing
}

/** The same of what was projected already, with the grid that settled what is seen. */
export function drawProjection(
  projection: Projection,
  view: View,
  sheet: Sheet,
  samples: number,
): { readonly drawing: LineDrawing; readonly painted: Painted } {
  const painted = paint(projection, sheet.widthPx, sheet.heightPx, samples)
  const regions = traceRegions(painted)
  const places = findAnchors(painted, projection.items.length)
  const inked = ink(projection, painted)
  const drawing: LineDrawing = {
    widthPx: sheet.widthPx,
    heightPx: sheet.heightPx,
    scale: projection.scale,
    view,
    originPx: projection.originPx,
    boxPx: projection.boxPx,
    items: projection.items.map((item, i) => ({
      item,
      tones: [0, 1, 2, 3].map((tone) => regions.get(4 * i + tone + 1) ?? '') as [
        string,
        string,
        string,
        string,
      ],
      outline: chainPath(inked[i]?.outline ?? []),
      edges: chainPath(inked[i]?.edges ?? []),
      areaPx2: places[i]?.areaPx2 ?? 0,
      anchors: places[i]?.anchors ?? null,
    })),
  }
  return { drawing, painted }
}
