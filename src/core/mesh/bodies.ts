import type { Mesh } from '../model/mesh.ts'
import { sortSides } from './edges.ts'

/**
 * Body number of a triangle that belongs to none: collapsed into a line, or an exact copy of an
 * earlier one.
 */
export const NO_BODY = 0xffffffff

/**
 * A mesh taken apart into bodies, each facing one way as far as walking from neighbour to neighbour
 * can tell.
 */
export interface Bodies {
  readonly count: number
  /** Per triangle: its body, numbered by first triangle, or `NO_BODY`. */
  readonly bodyOf: Uint32Array
  /** Per triangle: 1 where it must be turned over to face like the first triangle of its body. */
  readonly turned: Uint8Array
  /**
   * Sides without a partner, as 3·triangle + k. After turning they run along the rim of every gap,
   * so closing these rims closes every body.
   */
  readonly loose: readonly number[]
  /** Edges with a triangle on one side only. */
  readonly openEdges: number
  /** Edges with more than two triangles. */
  readonly crowdedEdges: number
  /** Edges whose two triangles run them the same way: one of the two faces wrongly. */
  readonly sameWayEdges: number
  /** Neighbours that could not be made to agree whichever way they are turned. */
  readonly contradictions: number
  readonly collapsed: number
  /** Triangles left out as exact copies (same vertices, same facing) of an earlier one. */
  readonly duplicates: number
  /** Per triangle: 1 where another one lies on the same three vertices and faces the other way. */
  readonly backed: Uint8Array
}

/**
 * Finds the bodies of a mesh. Triangles belong together when they share an edge; a shared corner
 * alone does not join. Where four or more triangles meet in an edge (two bodies touching along it),
 * each is joined to the partner that comes next in the file and runs the edge the other way, so
 * bodies that a file lists one after the other stay apart.
 */
export function findBodies(mesh: Mesh): Bodies {
  const { indices } = mesh
  const triangles = indices.length / 3
  const { starts, higher, sides, collapsed } = sortSides(mesh)
  const joins = startJoins(triangles)
  const copies = new Uint8Array(triangles)
  const backed = new Uint8Array(triangles)
  const loose: number[] = []
  let openEdges = 0
  let crowdedEdges = 0
  let sameWayEdges = 0
  let contradictions = 0

  /**
   * Joins the triangles of two sides on one edge; `against` says whether the sides run it in
   * opposite directions.
   */
  const pair = (one: number, other: number) => {
    const against = (one & 1) !== (other & 1)
    if (join(joins, triangleOf(one), triangleOf(other), against ? 0 : 1)) return
    contradictions++
    loose.push(one >>> 1, other >>> 1)
  }

  const pairPlain = (one: number, other: number) => {
    if (apexOf(indices, one) === apexOf(indices, other)) {
      backed[triangleOf(one)] = backed[triangleOf(other)] = 1
    }
    pair(one, other)
  }

  const crowded: Uint32Array[] = []
  forEachEdge(starts, higher, (first, next) => {
    if (next - first > 2) crowded.push(sides.subarray(first, next))
  })
  const anyDropped = dropBacks(indices, crowded, copies)

  forEachEdge(starts, higher, (first, next) => {
    // A view of its own for every edge would double the time, and all but a few edges are plain.
    const one = sides[first]!
    const other = sides[first + 1]!
    if (!anyDropped && next - first === 1) {
      openEdges++
      loose.push(one >>> 1)
    } else if (!anyDropped && next - first === 2 && (one & 1) !== (other & 1)) {
      pairPlain(one, other)
    } else {
      let edge = sides.subarray(first, next)
      if (anyDropped) edge = edge.filter((side) => copies[triangleOf(side)] === 0)
      if (edge.length === 0) return
      const distinct = dropCopies(indices, edge, copies, backed)
      const kind = settleEdge(indices, distinct, joins, loose, pair)
      if (kind === 'open') openEdges++
      if (kind === 'crowded') crowdedEdges++
      if (kind === 'same way') sameWayEdges++
    }
  })
  let duplicates = 0
  for (let t = 0; t < triangles; t++) duplicates += copies[t]!
  const { count, bodyOf, turned } = nameBodies(mesh, joins, copies)
  return {
    count,
    bodyOf,
    turned,
    loose,
    openEdges,
    crowdedEdges,
    sameWayEdges,
    contradictions,
    collapsed,
    duplicates,
    backed,
  }
}

const triangleOf = (side: number) => Math.floor((side >>> 1) / 3)

function forEachEdge(
  starts: Uint32Array,
  higher: Uint32Array,
  visit: (first: number, next: number) => void,
): void {
  for (let vertex = 0; vertex + 1 < starts.length; vertex++) {
    const end = starts[vertex + 1]!
    for (let first = starts[vertex]!; first < end;) {
      let next = first + 1
      while (next < end && higher[next] === higher[first]) next++
      visit(first, next)
      first = next
    }
  }
}

/**
 * Leaves out the later of two triangles that lie back to back where an edge then has one too many:
 * a reversed copy on a skin that is closed without it. The two skins of a two-sided surface meet in
 * even numbers and stay. Each one left out may uncover the next, so it goes round until nothing
 * changes. True when any was left out.
 */
function dropBacks(
  indices: Uint32Array,
  crowded: readonly Uint32Array[],
  copies: Uint8Array,
): boolean {
  let any = false
  for (let round = 0; round < MOST_ROUNDS; round++) {
    let changed = false
    for (const edge of crowded) {
      if (!hasOneTooMany(indices, edge, copies)) continue
      const byKey = new Map<number, number[]>()
      for (const side of edge) {
        if (copies[triangleOf(side)] === 1) continue
        const key = 2 * apexOf(indices, side) + (side & 1)
        const same = byKey.get(key)
        if (same === undefined) byKey.set(key, [side])
        else same.push(side)
      }
      for (const [key, later] of byKey) {
        // Sides come in the order of their triangles, so the earlier one of two is met first.
        const earlier = byKey.get(key ^ 1)
        if (earlier === undefined || triangleOf(earlier[0]!) > triangleOf(later[0]!)) continue
        for (const side of later) copies[triangleOf(side)] = 1
        changed = true
        break
      }
    }
    if (!changed) break
    any = true
  }
  return any
}

const MOST_ROUNDS = 50

/**
 * Whether an odd number of different triangles, three or more, meet in an edge. Edges may be
 * millions of sides long.
 */
function hasOneTooMany(indices: Uint32Array, edge: Uint32Array, copies: Uint8Array): boolean {
  const keys = new Set<number>()
  for (const side of edge) {
    if (copies[triangleOf(side)] === 0) keys.add(2 * apexOf(indices, side) + (side & 1))
  }
  return keys.size % 2 === 1 && keys.size > 2
}

/** The corner across from a side. */
function apexOf(indices: Uint32Array, side: number): number {
  const half = side >>> 1
  const k = half % 3
  return indices[half - k + ((k + 2) % 3)]!
}

/**
 * The sides of one edge without those of copied triangles; marks copies, and triangles that lie
 * back to back.
 */
function dropCopies(
  indices: Uint32Array,
  edge: Uint32Array,
  copies: Uint8Array,
  backed: Uint8Array,
): number[] {
  const seen = new Map<number, number>()
  const distinct: number[] = []
  for (const side of edge) {
    const key = 2 * apexOf(indices, side) + (side & 1)
    if (seen.has(key)) {
      copies[triangleOf(side)] = 1
      continue
    }
    seen.set(key, side)
    distinct.push(side)
    const back = seen.get(key % 2 === 0 ? key + 1 : key - 1)
    if (back !== undefined) backed[triangleOf(side)] = backed[triangleOf(back)] = 1
  }
  return distinct
}

/** Joins what meets in an edge that is not the plain case of two triangles running it both ways. */
function settleEdge(
  indices: Uint32Array,
  edge: readonly number[],
  joins: Joins,
  loose: number[],
  pair: (one: number, other: number) => void,
): 'open' | 'same way' | 'crowded' | 'plain' {
  const ups = edge.filter((side) => (side & 1) === 1)
  const downs = edge.filter((side) => (side & 1) === 0)
  const pairs = Math.min(ups.length, downs.length)
  for (let i = 0; i < pairs; i++) {
    // Two triangles back to back enclose nothing: take the next partner if there is one.
    if (apexOf(indices, ups[i]!) === apexOf(indices, downs[i]!)) {
      if (i + 1 < downs.length) swapNext(downs, i)
      else if (i + 1 < ups.length) swapNext(ups, i)
    }
    pair(ups[i]!, downs[i]!)
  }
  const rest = (ups.length > pairs ? ups : downs).slice(pairs)
  for (let i = 0; i + 1 < rest.length; i += 2) pair(rest[i]!, rest[i + 1]!)
  if (rest.length % 2 === 1) {
    const last = rest.at(-1)!
    loose.push(last >>> 1)
    const neighbour = edge.find((side) => side !== last)
    if (neighbour !== undefined) {
      join(joins, triangleOf(last), triangleOf(neighbour), (last & 1) === (neighbour & 1) ? 1 : 0)
    }
  }
  if (edge.length === 1) return 'open'
  if (edge.length > 2) return 'crowded'
  return pairs === 1 ? 'plain' : 'same way'
}

function swapNext(list: number[], at: number): void {
  const held = list[at]!
  list[at] = list[at + 1]!
  list[at + 1] = held
}

/**
 * Union–find over triangles. Each entry is 2·parent + 1 if it faces against its parent, 2·parent if
 * with it.
 */
type Joins = Uint32Array

function startJoins(triangles: number): Joins {
  const joins = new Uint32Array(triangles)
  for (let t = 0; t < triangles; t++) joins[t] = 2 * t
  return joins
}

/**
 * 2·root + 1 if the triangle faces against its root, 2·root if with it. Halves the path on the way.
 */
function findRoot(joins: Joins, triangle: number): number {
  let against = 0
  let at = triangle
  for (;;) {
    const link = joins[at]!
    const parent = link >>> 1
    if (parent === at) return 2 * at + against
    const up = joins[parent]!
    const shortcut = up ^ (link & 1)
    joins[at] = shortcut
    against ^= shortcut & 1
    at = shortcut >>> 1
  }
}

/**
 * Joins two triangles that face with (0) or against (1) each other; false if they are joined
 * already the other way.
 */
function join(joins: Joins, one: number, other: number, against: 0 | 1): boolean {
  const a = findRoot(joins, one)
  const b = findRoot(joins, other)
  const flip = (a & 1) ^ (b & 1) ^ against
  const rootA = a >>> 1
  const rootB = b >>> 1
  if (rootA === rootB) return flip === 0
  if (rootA < rootB) joins[rootB] = 2 * rootA + flip
  else joins[rootA] = 2 * rootB + flip
  return true
}

function nameBodies(mesh: Mesh, joins: Joins, copies: Uint8Array) {
  const { indices } = mesh
  const bodyOf = new Uint32Array(joins.length).fill(NO_BODY)
  const turned = new Uint8Array(joins.length)
  let count = 0
  for (let t = 0; t < joins.length; t++) {
    const a = indices[3 * t]!
    const b = indices[3 * t + 1]!
    const c = indices[3 * t + 2]!
    if (copies[t] === 1 || a === b || b === c || c === a) continue
    const found = findRoot(joins, t)
    const root = found >>> 1
    // The lower root always wins a join, so a body's root is its first triangle and is met before
    // the rest.
    bodyOf[t] = root === t ? count++ : bodyOf[root]!
    turned[t] = found & 1
  }
  return { count, bodyOf, turned }
}
