import { bodyBox } from '../../joints/itemMesh.ts'
import { itemPieces, sweptOf } from '../../joints/itemPieces.ts'
import { framePlaces } from '../../joints/framePlaces.ts'
import { wayIn } from '../../joints/wayIn.ts'
import { pieceKey } from '../../joints/placePieces.ts'
import { mapPoint, unmapDirection, unmapPoint } from '../../mesh/rigidMaps.ts'
import type { RigidMap } from '../../mesh/rigidMaps.ts'
import type { Aircraft } from '../../model/aircraft.ts'
import type { Part } from '../../model/frame.ts'
import type { Joint, JointEnd } from '../../model/joints.ts'
import type { Bounds, Vec3 } from '../../model/mesh.ts'
import { plus, times } from '../../model/vectors.ts'

/** One piece of a part. */
export type Piece = Pick<JointEnd, 'partId' | 'piece'>

/** Pieces of one part that go on together, and how. */
export interface AssemblyStep {
  /** The first step's are what all others hang on. */
  readonly pieces: readonly Piece[]
  /** What they meet, of what is there; empty in the first step of a group. */
  readonly onto: readonly Piece[]
  readonly joints: readonly Joint[]
  /** Joints whose screws cannot be reached any more after this step. */
  readonly covers: readonly Joint[]
}

/**
 * A part that flies and the box its mesh fills, in its own axes and mm; null while the mesh is not
 * at hand.
 */
export interface BoxedPart {
  readonly part: Part
  readonly boxMm: Bounds | null
}

/**
 * A driver is so long: what stands nearer to a screw's head keeps it out (common practice, no
 * source). mm
 */
const DRIVER_MM = 120
/** Nearer things are what the head lies on. mm */
const HEAD_MM = 0.3

/**
 * An order in which joined pieces, bought ones with a body among them, go together: each onto one
 * that is there, and after the screws it would keep a driver from; propellers last. What stands
 * there is told by boxes in the parts' own axes, so that a hollow part counts as full; where boxes
 * shut each other out in a ring, the frame's order decides.
 */
export function assemblySteps(
  boxed: readonly BoxedPart[],
  aircraft: Aircraft,
): readonly AssemblyStep[] {
  const parts = boxed.map(({ part }) => part)
  const { motions } = framePlaces(parts, aircraft)
  const joints = aircraft.joints.filter(({ a, b }) =>
    [a, b].every((end) => motions.has(pieceKey(end))),
  )
  const items = itemPieces(aircraft.items)
  const props = sweptOf(items)
  const pieces = [...parts, ...items]
    .flatMap(({ id: partId, quantity }) =>
      Array.from({ length: quantity }, (_, piece): Piece => ({ partId, piece })),
    )
    .filter((piece) => joints.some((joint) => meets(joint, piece)))
  const boxes = new Map<string, Bounds | null>([
    ...boxed.map(({ part, boxMm }) => [part.id, boxMm] as const),
    // What a propeller sweeps keeps no driver out.
    ...items.map(({ id, body }) => [id, props.has(id) ? null : bodyBox(body)] as const),
  ])
  const covers = coversOf(joints, pieces, motions, boxes)
  const isProp = ({ partId }: Piece): boolean => props.has(partId)
  const first = orderOf(
    pieces.filter((piece) => !isProp(piece)),
    [],
    joints,
    covers,
  )
  const order = orderOf(pieces.filter(isProp), first, joints, covers)
  return grouped(order, joints, covers)
}

function meets({ a, b }: Joint, piece: Piece): boolean {
  return isPiece(a, piece) || isPiece(b, piece)
}

function isPiece(one: Piece, other: Piece): boolean {
  return one.partId === other.partId && one.piece === other.piece
}

/** By piece: joints whose screws cannot be reached any more once it is there. */
function coversOf(
  joints: readonly Joint[],
  pieces: readonly Piece[],
  motions: ReadonlyMap<string, RigidMap>,
  boxes: ReadonlyMap<string, Bounds | null>,
): ReadonlyMap<string, readonly Joint[]> {
  const covers = new Map<string, Joint[]>()
  for (const joint of joints) {
    const heads = headsOf(joint, motions)
    // What a screw goes through on its way is no cover.
    const chained = joints.filter(
      ({ a, b, fastener }) => fastener?.end === 'through' && (meets(joint, a) || meets(joint, b)),
    )
    for (const piece of pieces) {
      const box = boxes.get(piece.partId) ?? null
      const motion = motions.get(pieceKey(piece))
      if (box === null || motion === undefined || meets(joint, piece)) continue
      if (chained.some((other) => meets(other, piece))) continue
      const isBefore = heads.some(({ at, out }) =>
        isMet(unmapPoint(motion, at), unmapDirection(motion, out), box),
      )
      if (!isBefore) continue
      const key = pieceKey(piece)
      covers.set(key, [...(covers.get(key) ?? []), joint])
    }
  }
  return covers
}

/**
 * Where drivers go: at a's outer side, at b's, or at both, by what holds the joint. In the frame's
 * axes.
 */
function headsOf(joint: Joint, motions: ReadonlyMap<string, RigidMap>) {
  const { a, b, fastener } = joint
  const way = wayIn(joint, motions)
  if (fastener === null || fastener.end === 'through' || way === null) return []
  const sides = [
    { end: a, out: times(way, -1) },
    { end: b, out: way },
  ]
  return sides.flatMap(({ end, out }) => {
    const motion = motions.get(pieceKey(end))
    if (motion === undefined) return []
    return end.bores
      .filter(({ openLow, openHigh }) => openLow && openHigh)
      .map(({ centreMm, depthMm }) => ({
        at: plus(mapPoint(motion, centreMm), times(out, depthMm / 2 + HEAD_MM)),
        out,
      }))
  })
}

/** Whether a straight from a point meets a box within a driver's length. */
function isMet(from: Vec3, way: Vec3, { min, max }: Bounds): boolean {
  let [near, far] = [0, DRIVER_MM]
  for (const k of [0, 1, 2] as const) {
    if (Math.abs(way[k]) < 1e-9) {
      if (from[k] < min[k] || from[k] > max[k]) return false
      continue
    }
    const [one, other] = [(min[k] - from[k]) / way[k], (max[k] - from[k]) / way[k]]
    near = Math.max(near, Math.min(one, other))
    far = Math.min(far, Math.max(one, other))
  }
  return near < far
}

/**
 * Pieces as they go on; the first of each group that hangs together is the one with most of its
 * holes joined.
 */
function orderOf(
  pieces: readonly Piece[],
  before: readonly Piece[],
  joints: readonly Joint[],
  covers: ReadonlyMap<string, readonly Joint[]>,
): readonly Piece[] {
  const there: Piece[] = [...before]
  const isThere = (piece: Piece): boolean => there.some((each) => isPiece(each, piece))
  const isDone = ({ a, b }: Joint): boolean => isThere(a) && isThere(b)
  const shutOut = (piece: Piece): number =>
    (covers.get(pieceKey(piece)) ?? []).filter((joint) => !isDone(joint)).length
  const waiting = [...pieces]
  while (waiting.length > 0) {
    const next = waiting.filter((piece) =>
      joints.some(
        ({ a, b }) => (isPiece(a, piece) && isThere(b)) || (isPiece(b, piece) && isThere(a)),
      ),
    )
    const holes = (piece: Piece): number =>
      joints.reduce((sum, { a, b }) => {
        const own = isPiece(a, piece) ? a : isPiece(b, piece) ? b : null
        return sum + (own === null ? 0 : Math.max(1, own.bores.length))
      }, 0)
    const chosen =
      next.length > 0
        ? next.reduce((best, piece) => (shutOut(piece) < shutOut(best) ? piece : best))
        : waiting.reduce((best, piece) => (holes(piece) > holes(best) ? piece : best))
    there.push(chosen)
    waiting.splice(waiting.indexOf(chosen), 1)
  }
  return there
}

/** Pieces of one part that follow each other and go onto the same parts are one step. */
function grouped(
  order: readonly Piece[],
  joints: readonly Joint[],
  covers: ReadonlyMap<string, readonly Joint[]>,
): readonly AssemblyStep[] {
  const steps: AssemblyStep[] = []
  order.forEach((piece, i) => {
    const there = order.slice(0, i)
    const own = joints.filter(
      ({ a, b }) =>
        (isPiece(a, piece) && there.some((each) => isPiece(each, b))) ||
        (isPiece(b, piece) && there.some((each) => isPiece(each, a))),
    )
    const onto = own.map(({ a, b }): Piece => (isPiece(a, piece) ? b : a))
    // What an earlier piece covered already was told then; what is not in yet cannot be.
    const covered = (covers.get(pieceKey(piece)) ?? []).filter(
      (joint) =>
        [joint.a, joint.b].every((end) => there.some((each) => isPiece(each, end))) &&
        !steps.some((step) => step.covers.includes(joint)),
    )
    const last = steps.at(-1)
    if (last !== undefined && isAlike(last, piece, onto)) {
      steps[steps.length - 1] = {
        pieces: [...last.pieces, piece],
        onto: [...last.onto, ...onto],
        joints: [...last.joints, ...own],
        covers: [...last.covers, ...covered],
      }
    } else steps.push({ pieces: [piece], onto, joints: own, covers: covered })
  })
  return steps
}

function isAlike(
  { pieces, onto: before }: AssemblyStep,
  piece: Piece,
  onto: readonly Piece[],
): boolean {
  const parts = (list: readonly Piece[]) => [...new Set(list.map(({ partId }) => partId))].join(' ')
  return (
    pieces[0]?.partId === piece.partId &&
    before.length > 0 &&
    onto.length > 0 &&
    parts(before) === parts(onto)
  )
}
