import type { Vec3 } from '../model/mesh.ts'
import type { LineDrawing } from './types.ts'
import { viewAxes } from './viewAxes.ts'

/** Where a point of what is drawn lands on the sheet, px. */
export function onSheet(
  { view, scale, originPx }: Pick<LineDrawing, 'view' | 'scale' | 'originPx'>,
  [x, y, z]: Vec3,
): readonly [x: number, y: number] {
  const { right, up } = viewAxes(view)
  return [
    originPx[0] + scale * (right[0] * x + right[1] * y + right[2] * z),
    originPx[1] - scale * (up[0] * x + up[1] * y + up[2] * z),
  ]
}
