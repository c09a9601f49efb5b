import type { JointThread } from './joints.ts'
import type { Vec3 } from './mesh.ts'

/**
 * What a hole is for. `screw`: one passes through. `tapped`: a thread is cut into the plastic.
 * `damper`: the neck of a rubber damper sits in it. `shaft`: a rod, tube or peg. `none`: nothing,
 * it saves grams or lets air or wires through.
 */
export type HoleUse =
  | { readonly kind: 'screw' | 'tapped' | 'insert'; readonly thread: JointThread }
  | { readonly kind: 'damper'; readonly neckMm: number; readonly grooveMm: number | null }
  | { readonly kind: 'shaft'; readonly shaftMm: number }
  | { readonly kind: 'none' }

/**
 * What its builder said a hole is for. The hole is kept as geometry, so that a changed mesh can be
 * asked for it.
 */
export interface ChosenUse {
  /** On its axis, half-way down, in the part's own axes. mm */
  readonly centreMm: Vec3
  readonly diameterMm: number
  readonly use: HoleUse
}

/** A printed hole and what a pin or a calliper said of it. */
export interface HoleReading {
  readonly id: string
  readonly printerId: string
  readonly materialId: string
  readonly lies: 'upright' | 'level'
  /** As drawn, between its facets. */
  readonly drawnMm: number
  /** The widest pin or drill that goes in, or what the calliper showed. */
  readonly measuredMm: number
  readonly by: 'pin' | 'calliper'
  /** The day, ISO 8601; null where nobody said. */
  readonly date: string | null
}
