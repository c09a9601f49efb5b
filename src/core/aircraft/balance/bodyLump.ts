import { bodyMiddle, isRound } from '../../joints/itemMesh.ts'
import type { RigidMap } from '../../mesh/rigidMaps.ts'
import type { ItemBody } from '../../model/aircraft.ts'
import { moveLump, transformLump, type Lump } from './lump.ts'

/**
 * The mass of a bought thing, g, spread evenly over its box or cylinder, where a joint puts it:
 * about its own middle m a²/12 along each side of a box; m r²/4 across and m h²/12 along the axis
 * of a cylinder (any mechanics text).
 */
export function bodyLump(body: ItemBody, massG: number, motion: RigidMap): Lump {
  const [along, across, high] = body.sizeMm
  const isTurned = isRound(body)
  const level = (side: number): number => (massG * side ** 2) / (isTurned ? 16 : 12)
  const own: Lump = {
    amount: massG,
    centreMm: bodyMiddle(body),
    second: [level(along), level(isTurned ? along : across), (massG * high ** 2) / 12, 0, 0, 0],
  }
  return moveLump(transformLump(own, motion.matrix), motion.move)
}
