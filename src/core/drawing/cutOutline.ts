import { alongBox } from '../mesh/boxOfMesh.ts'
import type { Bounds, Vec3 } from '../model/mesh.ts'
import { onSheet } from './onSheet.ts'
import type { Point } from './placeLeaders.ts'
import type { LineDrawing } from './types.ts'

/**
 * A cutting plane as it is drawn: a frame round the part, with a letter at two opposite corners. px
 */
export interface CutOutline {
  readonly corners: readonly Point[]
  readonly letters: readonly [Point, Point]
  /**
   * How far on the sheet, and which way, the frame goes while the plane goes from one end of the
   * part to the other.
   */
  readonly reach: Point
}

type Axis = 'x' | 'y' | 'z'

/**
 * How far the frame stands out. px, along the sides of the box where they do not point at the eye
 */
const OUT_PX = 18
/** Where the plane goes no farther than this it is seen face on, and no line stands for it. px */
const LEAST_REACH_PX = 24
const LETTER_OFF_PX = 10

/**
 * The frame of the plane that lies so far (0–1) along an axis of a part's box; null for one seen
 * face on.
 */
export function cutOutline(
  drawing: LineDrawing,
  boundsMm: Bounds,
  axis: Axis,
  share: number,
): CutOutline | null {
  const { min, max } = boundsMm
  const out = OUT_PX / drawing.scale
  const at = alongBox(boundsMm, axis, share)
  const [x0, y0, z0] = min.map((value) => value - out) as [number, number, number]
  const [x1, y1, z1] = max.map((value) => value + out) as [number, number, number]
  const around: Readonly<Record<Axis, readonly [Vec3, Vec3, Vec3, Vec3]>> = {
    x: [
      [at, y0, z0],
      [at, y1, z0],
      [at, y1, z1],
      [at, y0, z1],
    ],
    y: [
      [x0, at, z0],
      [x1, at, z0],
      [x1, at, z1],
      [x0, at, z1],
    ],
    z: [
      [x0, y0, at],
      [x1, y0, at],
      [x1, y1, at],
      [x0, y1, at],
    ],
  }
  const put = (corner: Vec3): Point => {
    const [x, y] = onSheet(drawing, corner)
    return { x, y }
  }
  const corners = around[axis].map((corner) => put(corner))
  const [first, , third] = around[axis]
  const middle = {
    x: corners.reduce((sum, { x }) => sum + x / 4, 0),
    y: corners.reduce((sum, { y }) => sum + y / 4, 0),
  }
  const letter = ({ x, y }: Point): Point => {
    const length = Math.hypot(x - middle.x, y - middle.y) || 1
    return {
      x: x + (LETTER_OFF_PX * (x - middle.x)) / length,
      y: y + (LETTER_OFF_PX * (y - middle.y)) / length,
    }
  }
  const k = { x: 0, y: 1, z: 2 }[axis]
  const from = put(min)
  const to = put(min.map((value, i) => (i === k ? max[k]! : value)) as unknown as Vec3)
  const reach = { x: to.x - from.x, y: to.y - from.y }
  if (Math.hypot(reach.x, reach.y) < LEAST_REACH_PX) return null
  return { corners, letters: [letter(put(first)), letter(put(third))], reach }
}
