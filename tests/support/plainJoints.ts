import type { BoreMark, Joint, JointEnd } from '../../src/core/model/joints.ts'
import type { Vec3 } from '../../src/core/model/mesh.ts'

/** A hole of 3.2 mm through a plate of 4 mm that lies upon z = 0, unless told otherwise. */
export function plainBore(centreMm: Vec3, more: Partial<BoreMark> = {}): BoreMark {
  return {
    kind: 'bore',
    centreMm,
    axis: [0, 0, 1],
    diameterMm: 3.2,
    depthMm: 4,
    openLow: true,
    openHigh: true,
    ...more,
  }
}

/** A row of such holes at these x. */
export function plainBores(xs: readonly number[], y = 0): readonly BoreMark[] {
  return xs.map((x) => plainBore([x, y, 2]))
}

/** That plate's end of a joint, which touches with its upper (1) or its lower (−1) face. */
export function plateEnd(
  partId: string,
  bores: readonly BoreMark[],
  side: 1 | -1,
  { piece = 0, thickMm = 4 } = {},
): JointEnd {
  const face = { pointMm: [0, 0, side === 1 ? thickMm : 0], normal: [0, 0, side] } as const
  return { partId, piece, bores, face }
}

/** Hole on hole, face on face, held by nothing. */
export function plainJoint(id: string, a: JointEnd, b: JointEnd, more: Partial<Joint> = {}): Joint {
  return {
    id,
    a,
    b,
    kind: 'bores',
    mirrored: false,
    turnDeg: 0,
    slideMm: 0,
    gapMm: 0,
    fastener: null,
    ...more,
  }
}
