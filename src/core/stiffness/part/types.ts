import type { Vec3 } from '../../model/mesh.ts'
import type { SolidGrid } from '../solid/types.ts'

/**
 * What the layers put into the cells of a grid, before it is known of what plastic and how sparse.
 */
export interface PartCells {
  /** Lines in the turned frame. mm */
  readonly linesMm: SolidGrid['linesMm']
  /**
   * How far the frame is turned against the bed's x and y, so that the part's long edges lie along
   * it. Degrees
   */
  readonly turnDeg: number
  /** By cell, x fastest: share (0–1) of it in walls and skins. */
  readonly solid: Float32Array
  /** By cell: share in infill rooms, outside all zones first, then in each zone. */
  readonly rooms: readonly Float32Array[]
  /** Cells that bridge a gap narrower than they are, and so are too stiff. */
  readonly gaps: number
  /** Cells with anything in them. */
  readonly full: number
}

/** A place where a part is held or pushed. */
export type Grip =
  /** The rings round some bores. In the frame of the bed. mm */
  | { readonly kind: 'bores'; readonly bores: readonly GripBore[] }
  /** What lies within `depthMm` of the end that `outward` points to; unit length, as on the bed. */
  | { readonly kind: 'end'; readonly outward: Vec3; readonly depthMm: number }

export interface GripBore {
  readonly centreMm: Vec3
  readonly axis: Vec3
  readonly diameterMm: number
  readonly depthMm: number
}

/** How a part is held and pushed. */
export interface LoadCase {
  readonly hold: Grip
  readonly push: Grip
  /** Unit length, in the frame of the bed. */
  readonly direction: Vec3
  readonly loadN: number
  /** What sits where it is pushed: a motor with its propeller. g */
  readonly tipG: number
}
