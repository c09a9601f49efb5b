import { runToEnd } from '../../model/runToEnd.ts'
import { purposeOf } from '../../joints/boresFit.ts'
import { isSameBore } from '../../joints/boresOf.ts'
import { boresOfBody, itemPieces } from '../../joints/itemPieces.ts'
import { framePlaces } from '../../joints/framePlaces.ts'
import { isOpenLoop, pieceKey } from '../../joints/placePieces.ts'
import { isOneAxis, offAxis } from '../../mesh/holes/oneAxis.ts'
import type { Aircraft } from '../../model/aircraft.ts'
import type { Part } from '../../model/frame.ts'
import type { Vec3 } from '../../model/mesh.ts'
import type { BoreMark, Joint } from '../../model/joints.ts'
import { dot, minus, plus, times } from '../../model/vectors.ts'
import { frameHardware } from '../hardware/jointItems.ts'
import { screwSpaces } from '../hardware/screwSpaces.ts'
import { inTheWay, type InTheWay } from './inTheWay.ts'
import { jointWords, nameOf, pieceWords, spaceWords, type NamedPieces } from './pieceWords.ts'
import type { PartTraits } from './types.ts'
import { mm } from '../../words/mm.ts'

export type JointFindingCode =
  /** A screw does not do what it should. */
  | 'screw'
  /** A joint closes a loop and does not meet. */
  | 'open-loop'
  /** A hole of a joint is not on the mesh any more. */
  | 'lost-hole'
  /** A joint of a piece that does not fly. */
  | 'idle'
  /** A piece that neither a joint nor a place leads to. */
  | 'hangs'
  /** A head, a nut or the end of a screw reaches into something bought. */
  | 'in-the-way'
  /** A hole for a screw that no joint uses. */
  | 'free-hole'

/**
 * Something about how a frame is put together that should be looked at. `code` is stable; `message`
 * is not.
 */
export interface JointFinding {
  readonly code: JointFindingCode
  /** One sentence in metric and in English numbers, see `toldWords`. */
  readonly message: string
  /** Null where no one joint is meant. */
  readonly jointId: string | null
  /** Where it is, in the frame's axes; left out where it is nowhere or everywhere. mm */
  readonly atMm?: readonly Vec3[]
}

/** Bores whose axes are nearer than this are one hole, counterbored. mm */
const ONE_AXIS_MM = 0.1

/** A part that flies, and what is known of its mesh. */
export interface JoinedPart {
  readonly part: Part
  /** Null while the mesh is not at hand: of its holes nothing is told then. */
  readonly traits: Pick<PartTraits, 'bores'> | null
}

/**
 * What is left over or wrong where pieces are joined, the gravest first; nothing of a frame without
 * joints. Pegs are not looked for on the mesh again.
 */
export function jointFindings(
  looked: readonly JoinedPart[],
  aircraft: Aircraft,
): readonly JointFinding[] {
  return runToEnd(jointFindingSteps(looked, aircraft))
}

/** The same in short steps, for a thread that a hand waits for. */
export function* jointFindingSteps(
  looked: readonly JoinedPart[],
  aircraft: Aircraft,
): Generator<void, readonly JointFinding[], void> {
  if (aircraft.joints.length === 0) return []
  const parts = looked.map(({ part }) => part)
  const bodied = itemPieces(aircraft.items)
  const pieces = [...parts, ...bodied]
  // Found once and kept by body: what is here to be found a body a step.
  for (const { body } of bodied) {
    boresOfBody(body)
    yield
  }
  const hardware = frameHardware({ parts, aircraft })
  yield
  const before = [
    ...openLoops(parts, aircraft, pieces),
    ...lostHoles(looked, aircraft, pieces),
    ...idleJoints(pieces, aircraft.joints),
    ...hangingPieces(parts, aircraft, pieces),
  ]
  yield
  const inTheirWay = yield* inTheWaySteps(hardware, parts, aircraft, pieces)
  return [
    ...before,
    ...inTheirWay,
    ...badScrews(hardware, pieces),
    ...freeHoles(looked, aircraft.joints),
  ]
}

type Hardware = ReturnType<typeof frameHardware>

/** What each may meet, and what comes of it. */
const HURTS: Readonly<Record<string, string>> = {
  motor: 'it can cut the windings',
  board: 'it can short the board',
  pack: 'it can pierce the pack, which burns',
  prop: 'the propeller strikes it',
}

/** Joint by joint and thing by thing, each with how many screws. */
export function screwsInTheWay(
  parts: readonly Part[],
  aircraft: Aircraft,
  pieces: readonly NamedPieces[],
): readonly JointFinding[] {
  return runToEnd(inTheWaySteps(frameHardware({ parts, aircraft }), parts, aircraft, pieces))
}

/** The same, a step a screw. */
function* inTheWaySteps(
  hardware: Hardware,
  parts: readonly Part[],
  aircraft: Aircraft,
  pieces: readonly NamedPieces[],
): Generator<void, readonly JointFinding[], void> {
  const items = itemPieces(aircraft.items)
  if (items.length === 0) return []
  const { motions } = framePlaces(parts, aircraft)
  const told = new Map<string, InTheWay[]>()
  for (const one of screwSpaces(hardware, motions)) {
    yield
    for (const each of inTheWay([one], items, motions)) {
      const { space, piece } = each
      const key = [space.joint.id, space.kind, pieceKey(piece)].join(' ')
      told.set(key, [...(told.get(key) ?? []), each])
    }
  }
  return [...told.values()].flatMap((all): readonly JointFinding[] => {
    const [first] = all
    if (first === undefined) return []
    const { space, piece, body } = first
    const who = spaceWords(space.kind, all.length)
    const hurt = HURTS[body]
    const message =
      `${jointWords(space.joint, pieces)}: ${who} ${all.length === 1 ? 'reaches' : 'reach'} into ` +
      `“${pieceWords(piece, pieces)}”${hurt === undefined ? '' : `: ${hurt}`}.`
    const atMm = all.map(({ space: { fromMm, toMm } }) => times(plus(fromMm, toMm), 0.5))
    return [{ code: 'in-the-way', message, jointId: space.joint.id, atMm }]
  })
}

function openLoops(
  parts: readonly Part[],
  aircraft: Aircraft,
  pieces: readonly NamedPieces[],
): readonly JointFinding[] {
  return framePlaces(parts, aircraft).loops.flatMap((loop): JointFinding[] => {
    const { jointId, misfitMm } = loop
    const joint = aircraft.joints.find(({ id }) => id === jointId)
    if (joint === undefined || !isOpenLoop(loop)) return []
    const message =
      `${jointWords(joint, pieces)}: they do not meet, ${mm(misfitMm)} mm are left where the joints ` +
      'come round to each other.'
    return [{ code: 'open-loop', message, jointId }]
  })
}

function lostHoles(
  looked: readonly JoinedPart[],
  { joints, items }: Aircraft,
  pieces: readonly NamedPieces[],
): readonly JointFinding[] {
  const found = new Map([
    ...looked.map(({ part, traits }) => [part.id, traits?.bores] as const),
    ...itemPieces(items).map(({ id, body }) => [id, boresOfBody(body)] as const),
  ])
  return joints.flatMap((joint) =>
    [joint.a, joint.b].flatMap((end): JointFinding[] => {
      const bores = found.get(end.partId)
      if (bores === undefined) return []
      const wanted = end.bores.filter(({ kind }) => kind === 'bore')
      const lost = wanted.filter((mark) => !bores.some((bore) => isSameBore(mark, bore)))
      if (lost.length === 0) return []
      const message =
        `${jointWords(joint, pieces)}: ${lost.length} of ${wanted.length} ` +
        `${wanted.length === 1 ? 'hole' : 'holes'} of “${nameOf(end, pieces)}” ` +
        `${lost.length === 1 ? 'is' : 'are'} not where it was on its mesh. Join them anew.`
      return [{ code: 'lost-hole', message, jointId: joint.id }]
    }),
  )
}

function idleJoints(
  pieces: readonly NamedPieces[],
  joints: readonly Joint[],
): readonly JointFinding[] {
  return joints.flatMap((joint): JointFinding[] => {
    const end = [joint.a, joint.b].find(({ partId, piece }) => piece >= piecesOf(partId, pieces))
    if (end === undefined) return []
    const flying = piecesOf(end.partId, pieces)
    const message =
      `${jointWords(joint, pieces)}: of “${nameOf(end, pieces)}” ` +
      `${flying === 0 ? 'none flies' : `${flying} ${flying === 1 ? 'flies' : 'fly'}`}, ` +
      `and this is piece ${end.piece + 1}. It joins nothing.`
    return [{ code: 'idle', message, jointId: joint.id }]
  })
}

function hangingPieces(
  parts: readonly Part[],
  aircraft: Aircraft,
  pieces: readonly NamedPieces[],
): readonly JointFinding[] {
  const { motions } = framePlaces(parts, aircraft)
  return pieces.flatMap(({ id: partId, name, quantity }): JointFinding[] => {
    const hanging = Array.from({ length: quantity }, (_, piece) =>
      pieceKey({ partId, piece }),
    ).filter((key) => !motions.has(key)).length
    if (hanging === 0) return []
    const message =
      quantity === 1
        ? `“${name}” hangs in the air: no joint and no place leads to it.`
        : `${hanging} of ${quantity} “${name}” hang in the air: no joint and no place leads to them.`
    return [{ code: 'hangs', message, jointId: null }]
  })
}

/** The same of several joints is told once. */
function badScrews(hardware: Hardware, pieces: readonly NamedPieces[]): readonly JointFinding[] {
  const jointsOf = new Map<string, readonly Joint[]>()
  for (const { joint, told } of hardware) {
    for (const text of told.warnings) jointsOf.set(text, [...(jointsOf.get(text) ?? []), joint])
  }
  return [...jointsOf].map(([text, joints]): JointFinding => ({
    code: 'screw',
    message: `${joints.map((joint) => jointWords(joint, pieces)).join('; ')}: ${text}`,
    jointId: joints.length === 1 ? (joints[0]?.id ?? null) : null,
  }))
}

/** Over all pieces that fly, by width: `4 of 3.2 mm`. */
function freeHoles(
  looked: readonly JoinedPart[],
  joints: readonly Joint[],
): readonly JointFinding[] {
  return looked.flatMap(({ part: { id: partId, name, quantity }, traits }): JointFinding[] => {
    const counts = new Map<string, number>()
    for (const hole of screwHoles(traits?.bores ?? [])) {
      for (let piece = 0; piece < quantity; piece++) {
        const used = joints.some((joint) =>
          [joint.a, joint.b].some(
            (end) =>
              end.partId === partId &&
              end.piece === piece &&
              end.bores.some((mark) => isOneHole(mark, hole)),
          ),
        )
        if (used) continue
        const width = String(Number(hole.diameterMm.toFixed(1)))
        counts.set(width, (counts.get(width) ?? 0) + 1)
      }
    }
    if (counts.size === 0) return []
    const words = [...counts].map(([width, count]) => `${count} of ${width} mm`).join(', ')
    const all = [...counts.values()].reduce((sum, count) => sum + count, 0)
    const message = `“${name}”: ${all === 1 ? 'a hole' : 'holes'} that no joint uses: ${words}.`
    return [{ code: 'free-hole', message, jointId: null }]
  })
}

/** Those a screw passes or bites in, each once: of several bores on one axis the narrowest. */
function screwHoles(bores: readonly BoreMark[]): readonly BoreMark[] {
  const narrowFirst = bores.toSorted((a, b) => a.diameterMm - b.diameterMm)
  const holes: BoreMark[] = []
  for (const bore of narrowFirst) {
    const { passes, holds } = purposeOf(bore)
    if (passes === 0 && holds === 0) continue
    if (!holes.some((hole) => isOneHole(hole, bore))) holes.push(bore)
  }
  return holes
}

function isOneHole(one: BoreMark, other: BoreMark): boolean {
  const between = minus(one.centreMm, other.centreMm)
  if (!isOneAxis(one.axis, other.axis)) return false
  const reachMm = (one.depthMm + other.depthMm) / 2 + Math.max(one.diameterMm, other.diameterMm)
  return offAxis(between, other.axis) < ONE_AXIS_MM && Math.abs(dot(between, other.axis)) <= reachMm
}

function piecesOf(id: string, pieces: readonly NamedPieces[]): number {
  return pieces.find((each) => each.id === id)?.quantity ?? 0
}
