import { viewAxes } from '../../core/drawing/viewAxes.ts'
import type { LineDrawing, View } from '../../core/drawing/types.ts'
import type { Vec3 } from '../../core/model/mesh.ts'
import { plus, times } from '../../core/model/vectors.ts'

/** Times the size that fits. */
const MOST_ZOOM = 8

/** Nearer than what fits the sheet. */
export interface Near {
  /** px a mm at which all of it fits. */
  readonly fitScale: number
  /** Above 1. */
  readonly zoom: number
  /** In the middle of the sheet, in the frame's axes. */
  readonly middleMm: Vec3
}

/** What of a drawing tells where it lies on its sheet. */
export type Lie = Pick<LineDrawing, 'widthPx' | 'heightPx' | 'scale' | 'originPx' | 'view'>

/** A drawing that fits, as something to come nearer to. */
export function nearOf({ widthPx, heightPx, scale, originPx: [x, y], view }: Lie): Near {
  const { right, up } = viewAxes(view)
  const acrossMm = (widthPx / 2 - x) / scale
  const upMm = (y - heightPx / 2) / scale
  return { fitScale: scale, zoom: 1, middleMm: plus(times(right, acrossMm), times(up, upMm)) }
}

/**
 * Nearer by a factor, or back; what lies `at` (px to the right and down from the sheet's middle)
 * stays below it. Null once all of it fits again.
 */
export function zoomBy(
  near: Near,
  view: View,
  factor: number,
  at: readonly [number, number] = [0, 0],
): Near | null {
  const zoom = Math.min(MOST_ZOOM, near.zoom * factor)
  if (zoom <= 1) return null
  const steadyMm = 1 / (near.fitScale * near.zoom) - 1 / (near.fitScale * zoom)
  return { ...shiftedMm(near, view, at[0] * steadyMm, -at[1] * steadyMm), zoom }
}

/** What is drawn goes so many px to the right and down. */
export function shiftBy(near: Near, view: View, rightPx: number, downPx: number): Near {
  const scale = near.fitScale * near.zoom
  return shiftedMm(near, view, -rightPx / scale, downPx / scale)
}

function shiftedMm(near: Near, view: View, acrossMm: number, upMm: number): Near {
  const { right, up } = viewAxes(view)
  const middleMm = plus(near.middleMm, plus(times(right, acrossMm), times(up, upMm)))
  return { ...near, middleMm }
}
