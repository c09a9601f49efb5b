import { projectPiece } from './project.ts'
import type { DrawnPiece, View } from './types.ts'
import { viewAxes } from './viewAxes.ts'

/** What pieces take up in a view, mm: to the right and upwards. */
export interface ViewBox {
  readonly left: number
  readonly right: number
  readonly bottom: number
  readonly top: number
}

/** All zero for pieces without triangles. */
export function boxInView(pieces: readonly DrawnPiece[], view: View): ViewBox {
  const axes = viewAxes(view)
  let left = Infinity
  let right = -Infinity
  let bottom = Infinity
  let top = -Infinity
  for (const { mesh, motion } of pieces) {
    const { x, y } = projectPiece(mesh, motion, axes)
    for (const v of mesh.indices) {
      left = Math.min(left, x[v]!)
      right = Math.max(right, x[v]!)
      bottom = Math.min(bottom, -y[v]!)
      top = Math.max(top, -y[v]!)
    }
  }
  return left > right ? { left: 0, right: 0, bottom: 0, top: 0 } : { left, right, bottom, top }
}
