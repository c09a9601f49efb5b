import { drawnPlaceOf, motionOfPlace, placesAsDrawn } from '../mesh/split/drawnPlace.ts'
import type { Place } from '../model/aircraft.ts'
import type { Part } from '../model/frame.ts'
import type { Joint, JointEnd } from '../model/joints.ts'
import type { Vec3 } from '../model/mesh.ts'
import { after, inverse, mapPoint, type RigidMap, STAY } from '../mesh/rigidMaps.ts'
import { lengthOf, minus, plus, times } from '../model/vectors.ts'
import { jointMotion } from './jointMotion.ts'

/** What placing needs of a part. */
export type PlacedPart = Pick<Part, 'id' | 'unit' | 'quantity' | 'drawnPlaces'>

/** A joint that closes a loop, and how far from closed it is. */
export interface Loop {
  readonly jointId: string
  /** Largest distance between where its joint wants a hole or a face of b and where b is. mm */
  readonly misfitMm: number
}

/** Holes of printed parts have this much play anyway (common practice, no source). mm */
const LOOP_OPEN_MM = 0.2

/** Whether a ring of joints is further from closed than its holes give. */
export const isOpenLoop = (loop: Loop): boolean => loop.misfitMm > LOOP_OPEN_MM

/** Where pieces really are. */
export interface PlacedPieces {
  /** Part by part, piece by piece: from joints where one leads there, else as typed. */
  readonly places: readonly Place[]
  /**
   * The same by piece, see `pieceKey`: of its part's own axes, in mm. Pieces without a place have
   * none.
   */
  readonly motions: ReadonlyMap<string, RigidMap>
  readonly loops: readonly Loop[]
  /**
   * Joints that lead nowhere: of a piece that does not fly any more, or of pieces that hang in the
   * air.
   */
  readonly idle: readonly string[]
}

interface Node {
  readonly partId: string
  readonly piece: number
  readonly typed: Place | null
  readonly drawn: Place | null
}

/**
 * Walks the joints from one piece of each group that hangs together. That piece stays where its
 * place is typed, else where its 3MF puts it; of a frame in which nothing has a place, the first
 * piece of the largest group lies at the origin. Other groups without a place stay without one. Of
 * several that could start, one that is no joint's b does: b is placed from a.
 */
export function placePieces(
  parts: readonly PlacedPart[],
  typed: readonly Place[],
  joints: readonly Joint[],
): PlacedPieces {
  const nodes = nodesOf(parts, typed)
  if (joints.length === 0)
    return { places: typed, motions: typedMotions(nodes), loops: [], idle: [] }
  const sound = joints.filter(({ a, b }) => nodes.has(pieceKey(a)) && nodes.has(pieceKey(b)))
  const groups = groupsOf(nodes, sound)
  const motions = new Map<string, RigidMap>()
  const loops: Loop[] = []
  const rooted = groups.filter((group) => rootOf(group, nodes, sound).place !== null)
  const isBare = rooted.length === 0 && typed.length === 0
  const largest = groups.reduce<readonly string[]>(
    (most, group) => (group.length > most.length ? group : most),
    [],
  )
  const roots = new Set<string>()
  for (const group of isBare ? [largest] : rooted) {
    const { key, place } = rootOf(group, nodes, sound)
    roots.add(key)
    motions.set(key, place === null ? STAY : motionOfPlace(place))
    const used = walk(key, sound, motions)
    loops.push(...loopsOf(sound, used, new Set(group), motions))
  }
  const known = new Set(parts.map(({ id }) => id))
  const jointed = [...nodes].flatMap(([key, node]): Place[] => {
    const motion = motions.get(key)
    // A root stays the very place that was typed: by that the page tells it from what joints moved.
    if (node.typed !== null && (motion === undefined || roots.has(key))) return [node.typed]
    return motion === undefined ? [] : [placeOf(node.partId, motion)]
  })
  return {
    motions: new Map([...typedMotions(nodes), ...motions]),
    places: [...jointed, ...typed.filter(({ partId }) => !known.has(partId))],
    loops,
    idle: joints.filter(({ a }) => !motions.has(pieceKey(a))).map(({ id }) => id),
  }
}

/** By what a piece is told from all others. */
export function pieceKey({ partId, piece }: Pick<JointEnd, 'partId' | 'piece'>): string {
  return `${piece} ${partId}`
}

function nodesOf(parts: readonly PlacedPart[], typed: readonly Place[]): ReadonlyMap<string, Node> {
  const nodes = new Map<string, Node>()
  for (const part of parts) {
    const own = typed.filter(({ partId }) => partId === part.id)
    const drawn = placesAsDrawn([part])
    for (let piece = 0; piece < part.quantity; piece++) {
      const node = {
        partId: part.id,
        piece,
        typed: own[piece] ?? null,
        drawn: drawn[piece] ?? null,
      }
      nodes.set(pieceKey(node), node)
    }
  }
  return nodes
}

function typedMotions(nodes: ReadonlyMap<string, Node>): ReadonlyMap<string, RigidMap> {
  return new Map(
    [...nodes].flatMap(([key, { typed }]) => (typed === null ? [] : [[key, motionOfPlace(typed)]])),
  )
}

/** Pieces that joints hold together, each group in the order of the frame. */
function groupsOf(
  nodes: ReadonlyMap<string, Node>,
  joints: readonly Joint[],
): readonly (readonly string[])[] {
  const next = new Map<string, string[]>()
  for (const { a, b } of joints) {
    for (const [from, to] of [
      [pieceKey(a), pieceKey(b)],
      [pieceKey(b), pieceKey(a)],
    ] as const) {
      const list = next.get(from) ?? []
      list.push(to)
      next.set(from, list)
    }
  }
  const groupOf = new Map<string, number>()
  const groups: string[][] = []
  for (const key of nodes.keys()) {
    if (!next.has(key)) continue
    if (!groupOf.has(key)) {
      const waiting = [key]
      for (let one = waiting.pop(); one !== undefined; one = waiting.pop()) {
        if (groupOf.has(one)) continue
        groupOf.set(one, groups.length)
        waiting.push(...(next.get(one) ?? []))
      }
      groups.push([])
    }
    groups[groupOf.get(key) ?? 0]?.push(key)
  }
  return groups
}

function rootOf(
  group: readonly string[],
  nodes: ReadonlyMap<string, Node>,
  joints: readonly Joint[],
): { readonly key: string; readonly place: Place | null } {
  const placedFrom = new Set(joints.map(({ b }) => pieceKey(b)))
  const free = group.filter((key) => !placedFrom.has(key))
  for (const which of ['typed', 'drawn'] as const) {
    for (const key of [...free, ...group]) {
      const place = nodes.get(key)?.[which] ?? null
      if (place !== null) return { key, place }
    }
  }
  return { key: free[0] ?? group[0] ?? '', place: null }
}

/** Places what hangs on `root`, the nearest first; the joints that did it come back. */
function walk(root: string, joints: readonly Joint[], motions: Map<string, RigidMap>): Set<Joint> {
  const used = new Set<Joint>()
  const waiting = [root]
  for (const key of waiting) {
    const motion = motions.get(key)
    if (motion === undefined) continue
    for (const joint of joints) {
      const [a, b] = [pieceKey(joint.a), pieceKey(joint.b)]
      const other = a === key ? b : b === key ? a : null
      if (other === null || motions.has(other)) continue
      const step = jointMotion(joint)
      motions.set(other, after(motion, a === key ? step : inverse(step)))
      used.add(joint)
      waiting.push(other)
    }
  }
  return used
}

function loopsOf(
  joints: readonly Joint[],
  used: ReadonlySet<Joint>,
  group: ReadonlySet<string>,
  motions: ReadonlyMap<string, RigidMap>,
): readonly Loop[] {
  return joints.flatMap((joint): Loop[] => {
    const [from, to] = [motions.get(pieceKey(joint.a)), motions.get(pieceKey(joint.b))]
    if (used.has(joint) || !group.has(pieceKey(joint.a))) return []
    if (from === undefined || to === undefined) return []
    return [{ jointId: joint.id, misfitMm: misfitMm(joint, from, to) }]
  })
}

function misfitMm(joint: Joint, from: RigidMap, to: RigidMap): number {
  const wanted = after(from, jointMotion(joint))
  const off = watched(joint).map((point) =>
    lengthOf(minus(mapPoint(wanted, point), mapPoint(to, point))),
  )
  return Math.max(0, ...off)
}

/** Points of b by which one sees whether it sits: both ends of each bore, and its face. */
function watched({ b, kind }: Joint): readonly Vec3[] {
  const ends = b.bores.flatMap(({ centreMm, axis, depthMm }) => [
    plus(centreMm, times(axis, depthMm / 2)),
    plus(centreMm, times(axis, -depthMm / 2)),
  ])
  const face = b.face === null ? [] : [b.face.pointMm]
  // One axis leaves b free to turn: what lies off it says nothing.
  const seen = b.bores.length === 1 ? ends : [...ends, ...face]
  return seen.length > 0 || kind !== 'drawn'
    ? seen
    : [
        [0, 0, 0],
        [100, 0, 0],
        [0, 100, 0],
      ]
}

function placeOf(partId: string, motion: RigidMap): Place {
  const { position, rotateDeg, mirrored } = drawnPlaceOf(motion, [0, 0, 0])
  return { partId, positionMm: position, rotateDeg, mirrored }
}
