import type { Place } from '../../model/aircraft.ts'
import type { Nine } from '../../mesh/pose.ts'
import { turnMatrix } from '../../mesh/pose.ts'
import type { Vec3 } from '../../model/mesh.ts'
import type { Lump } from './lump.ts'
import { moveLump, transformLump } from './lump.ts'

const MIRROR_X: Nine = [-1, 0, 0, 0, 1, 0, 0, 0, 1]

/**
 * A part's lump, in the axes it was drawn in, where `place` puts it: mirrored in x, turned about x,
 * y, z, moved.
 */
export function placeLump(lump: Lump, place: Place): Lump {
  const own = place.mirrored ? transformLump(lump, MIRROR_X) : lump
  const turned = transformLump(own, turnMatrix({ rotateDeg: place.rotateDeg }))
  return moveLump(turned, place.positionMm)
}

/** Pieces of one part evenly round a circle, as arms are. */
export interface ArmPattern {
  readonly partId: string
  readonly count: number
  /** From the middle to where the part's own origin lands. mm */
  readonly radiusMm: number
  /** Where the first one points, from x (forward) towards y (left). */
  readonly firstDeg: number
  /** The middle of the circle. */
  readonly positionMm: Vec3
}

/** Places of a pattern: each piece turned so that its own x points outwards. */
export function armPattern(pattern: ArmPattern): readonly Place[] {
  const { partId, firstDeg } = pattern
  return ringPoints(pattern).map((positionMm, i) => ({
    partId,
    positionMm,
    rotateDeg: [0, 0, firstDeg + (360 * i) / pattern.count],
    mirrored: false,
  }))
}

/** Points evenly round a circle in a level plane. */
export function ringPoints(ring: Omit<ArmPattern, 'partId'>): readonly Vec3[] {
  const count = Math.max(0, Math.floor(ring.count))
  const [x, y, z] = ring.positionMm
  return Array.from({ length: count }, (_, i): Vec3 => {
    const [cos, , , sin] = turnMatrix({ rotateDeg: [0, 0, ring.firstDeg + (360 * i) / count] })
    return [x + ring.radiusMm * cos, y + ring.radiusMm * sin, z]
  })
}
