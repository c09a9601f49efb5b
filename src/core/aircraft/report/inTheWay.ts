import { isRound } from '../../joints/itemMesh.ts'
import type { ItemPiece } from '../../joints/itemPieces.ts'
import { pieceKey, type PlacedPieces } from '../../joints/placePieces.ts'
import { flatAxes } from '../../mesh/holes/fitCircle.ts'
import { unmapPoint } from '../../mesh/rigidMaps.ts'
import type { BodyKind, ItemBody } from '../../model/aircraft.ts'
import type { JointEnd } from '../../model/joints.ts'
import type { Vec3 } from '../../model/mesh.ts'
import { lengthOf, minus, plus, times, unit } from '../../model/vectors.ts'
import type { FastenerSpace } from '../hardware/screwSpaces.ts'

/** A head, a nut or the end of a screw that reaches into a bought thing it does not hold. */
export interface InTheWay {
  readonly space: FastenerSpace
  readonly piece: Pick<JointEnd, 'partId' | 'piece'>
  readonly body: BodyKind
}

/** Lying on each other is not in the way. mm */
const TOUCH_MM = 0.1
/** Points along a fastener's axis are at most so far apart. mm */
const STEP_MM = 0.5
const ROUND = 8

/** What of the screws runs into the bodies of bought things that have a place; each pair once. */
export function inTheWay(
  spaces: readonly FastenerSpace[],
  items: readonly ItemPiece[],
  motions: PlacedPieces['motions'],
): readonly InTheWay[] {
  const bodies = items.flatMap(({ id: partId, quantity, body }) =>
    Array.from({ length: quantity }, (_, piece) => ({ partId, piece, body })).flatMap((each) => {
      const motion = motions.get(pieceKey(each))
      return motion === undefined ? [] : [{ ...each, motion }]
    }),
  )
  return spaces.flatMap((space) => {
    const points = pointsIn(space)
    return bodies
      .filter((each) => !space.own.has(pieceKey(each)))
      .filter(({ body, motion }) =>
        points.some((point) => isInside(body, unmapPoint(motion, point))),
      )
      .map(({ partId, piece, body }): InTheWay => ({
        space,
        piece: { partId, piece },
        body: body.kind,
      }))
  })
}

function pointsIn({ fromMm, toMm, radiusMm }: FastenerSpace): readonly Vec3[] {
  const along = minus(toMm, fromMm)
  const steps = Math.max(1, Math.ceil(lengthOf(along) / STEP_MM))
  const { right, up } = flatAxes(unit(along))
  return Array.from({ length: steps + 1 }, (_, i) => plus(fromMm, times(along, i / steps))).flatMap(
    (middle) => [
      middle,
      ...[0.5, 1].flatMap((share) =>
        Array.from({ length: ROUND }, (_, k) => {
          const angle = (2 * Math.PI * k) / ROUND
          const side = times(right, share * radiusMm * Math.cos(angle))
          return plus(middle, plus(side, times(up, share * radiusMm * Math.sin(angle))))
        }),
      ),
    ],
  )
}

function isInside(body: ItemBody, [x, y, z]: Vec3): boolean {
  const [along, across, high] = body.sizeMm
  if (z < TOUCH_MM || z > high - TOUCH_MM) return false
  if (isRound(body)) return Math.hypot(x, y) < along / 2 - TOUCH_MM
  return Math.abs(x) < along / 2 - TOUCH_MM && Math.abs(y) < across / 2 - TOUCH_MM
}
