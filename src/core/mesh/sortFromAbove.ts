import type { Mesh } from '../model/mesh.ts'
import { NO_BODY, type Bodies } from './bodies.ts'

/** Most triangles in a leaf. */
const LEAF = 8
/**
 * So many places go past the bounds of all triangles before these are sorted: of bodies that cut
 * one another the first place mostly tells, and sorting a million of them, 0.7 s, takes as long as
 * some forty places.
 */
const UNSORTED = 3

/** Triangles seen from above, sorted by place. */
export interface SortedTriangles {
  /** Tells of every triangle whose bounds, seen from above, hold (x, y), and of few others. */
  at(x: number, y: number, tell: (triangle: number) => void): void
}

/**
 * A tree of bounds, made once it is worth it: each node halves its triangles along the axis in
 * which their middles spread most. Built in n log n. Nodes lie like a heap's, the halves of node i
 * being 2i + 1 and 2i + 2, and a node's triangles follow from its way down, so that only bounds are
 * kept.
 *
 * @param solid 1 for each body whose triangles are wanted.
 */
export function sortFromAbove(mesh: Mesh, bodies: Bodies, solid: Uint8Array): SortedTriangles {
  const order = pickTriangles(bodies, solid)
  const bounds = boundsOf(mesh, order)
  let leaves = 1
  while (leaves * LEAF < order.length) leaves *= 2
  const nodes = new Float64Array(4 * (2 * leaves - 1))
  let asked = 0

  function build(node: number, from: number, to: number): void {
    if (node >= leaves - 1) {
      enclose(nodes, node, bounds, order, from, to)
      return
    }
    const middle = (from + to) >>> 1
    const isWide = spread(bounds, order, 0, from, to) >= spread(bounds, order, 1, from, to)
    halve(order, bounds, isWide ? 0 : 1, from, to, middle)
    const [one, other] = [2 * node + 1, 2 * node + 2]
    build(one, from, middle)
    build(other, middle, to)
    for (let k = 0; k < 2; k++) {
      nodes[4 * node + k] = Math.min(nodes[4 * one + k]!, nodes[4 * other + k]!)
      nodes[4 * node + 2 + k] = Math.max(nodes[4 * one + 2 + k]!, nodes[4 * other + 2 + k]!)
    }
  }

  return {
    at(x, y, tell) {
      if (order.length === 0) return
      if (asked++ < UNSORTED) {
        for (const t of order) if (holds(bounds, t, x, y)) tell(t)
        return
      }
      if (asked === UNSORTED + 1) build(0, 0, order.length)
      visit(0, 0, order.length)

      function visit(node: number, from: number, to: number): void {
        if (!holds(nodes, node, x, y)) return
        if (node >= leaves - 1) {
          for (let i = from; i < to; i++) tell(order[i]!)
          return
        }
        const middle = (from + to) >>> 1
        visit(2 * node + 1, from, middle)
        visit(2 * node + 2, middle, to)
      }
    },
  }
}

function pickTriangles({ bodyOf }: Bodies, solid: Uint8Array): Uint32Array {
  const picked = new Uint32Array(bodyOf.length)
  let count = 0
  bodyOf.forEach((body, t) => {
    if (body !== NO_BODY && solid[body] === 1) picked[count++] = t
  })
  return picked.subarray(0, count)
}

function holds(bounds: Float64Array, one: number, x: number, y: number): boolean {
  return (
    x >= bounds[4 * one]! &&
    x <= bounds[4 * one + 2]! &&
    y >= bounds[4 * one + 1]! &&
    y <= bounds[4 * one + 3]!
  )
}

/** Four per triangle of the mesh: lowest x, y, highest x, y. */
function boundsOf({ positions, indices }: Mesh, order: Uint32Array): Float64Array {
  const bounds = new Float64Array((4 * indices.length) / 3)
  for (const t of order) {
    for (let k = 0; k < 2; k++) {
      const a = positions[3 * indices[3 * t]! + k]!
      const b = positions[3 * indices[3 * t + 1]! + k]!
      const c = positions[3 * indices[3 * t + 2]! + k]!
      bounds[4 * t + k] = Math.min(a, b, c)
      bounds[4 * t + 2 + k] = Math.max(a, b, c)
    }
  }
  return bounds
}

function enclose(
  nodes: Float64Array,
  node: number,
  bounds: Float64Array,
  order: Uint32Array,
  from: number,
  to: number,
): void {
  for (let k = 0; k < 2; k++) {
    let low = Infinity
    let high = -Infinity
    for (let i = from; i < to; i++) {
      low = Math.min(low, bounds[4 * order[i]! + k]!)
      high = Math.max(high, bounds[4 * order[i]! + 2 + k]!)
    }
    nodes[4 * node + k] = low
    nodes[4 * node + 2 + k] = high
  }
}

/** Twice the middle of a triangle's bounds. */
function middleOf(bounds: Float64Array, t: number, axis: number): number {
  return bounds[4 * t + axis]! + bounds[4 * t + 2 + axis]!
}

function spread(
  bounds: Float64Array,
  order: Uint32Array,
  axis: number,
  from: number,
  to: number,
): number {
  let low = Infinity
  let high = -Infinity
  for (let i = from; i < to; i++) {
    const middle = middleOf(bounds, order[i]!, axis)
    if (middle < low) low = middle
    if (middle > high) high = middle
  }
  return high - low
}

/**
 * Puts the triangles with the lower middles before `middle`, the others behind it (C. A. R. Hoare,
 * “Algorithm 65: Find”, Communications of the ACM 4, 1961, 321).
 */
function halve(
  order: Uint32Array,
  bounds: Float64Array,
  axis: number,
  from: number,
  to: number,
  middle: number,
): void {
  let low = from
  let high = to - 1
  while (low < high) {
    const pivot = middleOf(bounds, order[(low + high) >>> 1]!, axis)
    let i = low
    let j = high
    while (i <= j) {
      while (middleOf(bounds, order[i]!, axis) < pivot) i++
      while (middleOf(bounds, order[j]!, axis) > pivot) j--
      if (i > j) break
      const swapped = order[i]!
      order[i++] = order[j]!
      order[j--] = swapped
    }
    if (middle <= j) high = j
    else if (middle >= i) low = i
    else return
  }
}
