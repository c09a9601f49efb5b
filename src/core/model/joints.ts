import type { Vec3 } from './mesh.ts'

/**
 * A round bore or a peg, found on the mesh of a part. All in the part's own axes and in mm, before
 * any place.
 */
export interface BoreMark {
  readonly kind: 'bore' | 'peg'
  /** On the axis, half-way down. mm */
  readonly centreMm: Vec3
  /**
   * Unit length, along the bore. Where no face says how a joint lies, the axes of both ends point
   * the same way.
   */
  readonly axis: Vec3
  readonly diameterMm: number
  readonly depthMm: number
  /** Open at the end that the axis points away from, and at the one it points to. */
  readonly openLow: boolean
  readonly openHigh: boolean
}

/**
 * Flat face that touches: a point on it and its outward normal of unit length, in the part's own
 * axes. mm
 */
export interface JointFace {
  readonly pointMm: Vec3
  readonly normal: Vec3
}

/**
 * One end of a joint. Bores are kept as geometry, so that a changed mesh can be asked whether it
 * still has them; the first of one end meets the first of the other, and so on.
 */
export interface JointEnd {
  readonly partId: string
  /** 0-based among the part's pieces that fly. */
  readonly piece: number
  readonly bores: readonly BoreMark[]
  /** Null where nothing touches: a shaft slides. */
  readonly face: JointFace | null
}

/**
 * `bores`: axes meet, faces touch. `shaft`: a peg or tube in a bore. `faces`: flat to flat.
 * `drawn`: as the files lie.
 */
export type JointKind = 'bores' | 'shaft' | 'faces' | 'drawn'

/** Coarse metric threads, by ISO 261 name, that anything here is held by; thin ones first. */
export const JOINT_THREADS = ['M2', 'M2.5', 'M3', 'M4', 'M5'] as const

export type JointThread = (typeof JOINT_THREADS)[number]

/**
 * What holds a joint. `post`: a threaded post fills the gap, with a screw at each end. `through`:
 * its screw goes on into what another joint adds below, and ends there.
 */
export interface JointFastener {
  readonly thread: JointThread
  readonly end: 'nut' | 'insert' | 'tapped' | 'post' | 'through'
}

/** Two pieces that meet; the place of either follows from the other's. */
export interface Joint {
  readonly id: string
  readonly a: JointEnd
  readonly b: JointEnd
  readonly kind: JointKind
  /** Whether exactly one of the two pieces is the mirror image of its mesh. */
  readonly mirrored: boolean
  /** Of b about a's face normal, or a's axis without a face; only where at most one axis meets. */
  readonly turnDeg: number
  /** Of b along a's axis, where no faces touch. mm */
  readonly slideMm: number
  /** Between the faces: a damper, a washer. mm */
  readonly gapMm: number
  /** Null: nothing that is bought (glue, a press fit). */
  readonly fastener: JointFastener | null
}
