import type { BoreMark, Joint } from '../model/joints.ts'
import type { Vec3 } from '../model/mesh.ts'
import type { RigidMap } from '../mesh/rigidMaps.ts'

/** Where a bore meets the face round it, or where a peg stands on one. mm */
export interface Mouth {
  /** Its narrowest part, where several stand on one axis; of a seat for an insert the seat. */
  readonly bore: BoreMark
  /** On the axis, in the plane of the face; past a countersink's cone. */
  readonly atMm: Vec3
  /** Unit length, out of the mouth; of a peg from its foot to its tip. */
  readonly out: Vec3
  /** From here to the far end of what stands on the axis. */
  readonly lengthMm: number
  /** Wider here than inside: a head or a nut sits in it. */
  readonly sunk: boolean
}

/** A flat face of a part. mm */
export interface FlatFace {
  readonly centreMm: Vec3
  /** Unit length, outwards. */
  readonly normal: Vec3
  readonly areaMm2: number
  /** Along which it is longest, and across. */
  readonly along: Vec3
  readonly across: Vec3
  /** Radii of gyration along and across. mm */
  readonly gyrationMm: readonly [along: number, across: number]
  /** Cube roots of the mean cubes along and across: which way it tapers. mm */
  readonly skewMm: readonly [along: number, across: number]
}

/** A way in which holes of b come to meet holes of a. */
export interface BoreMatch {
  /** Places in the lists of mouths. */
  readonly pairs: readonly (readonly [a: number, b: number])[]
  /** Where b goes, in a's coordinates. */
  readonly motion: RigidMap
  /** Furthest that two axes are apart. mm */
  readonly offMm: number
  /** A hole comes to lie beside one it should meet if the faces touched. */
  readonly isNearMiss: boolean
}

/** A way for two parts to meet, before it is judged. mm */
export interface Candidate {
  readonly kind: Joint['kind']
  /** Mouths that meet. */
  readonly pairs: BoreMatch['pairs']
  /** Where b goes, in a's coordinates. */
  readonly motion: RigidMap
  /**
   * Across the faces that touch, or along the shaft, in a's coordinates; a unit vector out of a.
   */
  readonly direction: Vec3
  /** Where along `direction` the faces touch; null where none need to. */
  readonly planeMm: number | null
  /** Furthest that two axes that meet are apart. */
  readonly offMm: number
  /** Of the equal faces that meet; 0 where holes do. */
  readonly areaMm2: number
  /** The files put them so. */
  readonly isDrawn: boolean
  /** Something bought lies on a face of it. */
  readonly isRest?: boolean
  /** Left out where the faces touch; else posts stand between them, however long. */
  readonly isApart?: boolean
}

/** What speaks for and against a candidate. */
export interface Verdict {
  /** Of both in each other. Exactly 0 where they touch. */
  readonly clashMm3: number
  readonly contactMm2: number
  /**
   * From the middle of a to the middle of b, along the faces that touch: arms and booms go out. mm
   */
  readonly outMm: number
  /** 0–1: how far round the holes, or over the faces, both are there. */
  readonly seated: number
  /** Holes nobody meets that the other part stands before. */
  readonly covered: number
  /** Heads or nuts that would be shut in between. */
  readonly headsInside: number
}
