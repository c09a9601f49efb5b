import type { Vec3 } from '../core/model/mesh.ts'

/**
 * One end of a joint as the draughtsman points at it: coordinates are the drawing's own, mm, and
 * need only be near.
 */
export interface DrawnEnd {
  /** Name of the part, or of a bought item with a body. */
  readonly part: string
  /** Which of its places, from 0. */
  readonly piece: number
  /** Near the mouths of its bores; the bores themselves are found on the mesh. */
  readonly mouths: readonly Vec3[]
  /**
   * Outward normal, of unit length, of the face that touches, which is the plane of the first
   * mouth; null where a shaft slides.
   */
  readonly normal: Vec3 | null
  /** How far the face lies behind the first mouth, where a rim touches and not the mouth. mm */
  readonly behindMm?: number
  /** On the face, where no bore meets: what lies on it is pressed to its middle. */
  readonly on?: Vec3
}

/** Two pieces that meet, bore on bore in the order given. */
export interface DrawnJoint {
  readonly a: DrawnEnd
  readonly b: DrawnEnd
  /** Between the faces: a washer, a damper, a post, a tube. */
  readonly gapMm: number
  /** Of b about the axis where only one meets; left out, 0. */
  readonly turnDeg?: number
  /** What holds it; null where glue, a rod or a press fit does. */
  readonly fastener: {
    readonly thread: 'M2' | 'M3'
    readonly end: 'nut' | 'insert' | 'tapped' | 'post'
  } | null
}

/** An end at the first piece of a part unless another is named. */
export function end(
  part: string,
  mouths: readonly Vec3[],
  normal: Vec3 | null,
  more: { readonly piece?: number; readonly behindMm?: number; readonly on?: Vec3 } = {},
): DrawnEnd {
  return { part, piece: 0, mouths, normal, ...more }
}

export function joint(
  a: DrawnEnd,
  b: DrawnEnd,
  fastener: DrawnJoint['fastener'] = null,
  gapMm = 0,
  turnDeg = 0,
): DrawnJoint {
  return { a, b, gapMm, fastener, turnDeg }
}

/** A face that something lies on, and the point of it below its middle. */
export function face(part: string, on: Vec3, normal: Vec3, piece = 0): DrawnEnd {
  return end(part, [], normal, { on, piece })
}

export const UP: Vec3 = [0, 0, 1]
export const DOWN: Vec3 = [0, 0, -1]
