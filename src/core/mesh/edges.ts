import type { Mesh } from '../model/mesh.ts'

/**
 * Every side of every triangle, those on the same two vertices next to each other.
 *
 * A side is numbered 3·triangle + k, running from corner k to the next. `sides` holds 2·number + 1
 * where the side runs from its lower vertex to its higher one, 2·number where it runs back. Sides
 * of lower vertex v stand from `starts[v]` to `starts[v + 1]`, ordered by higher vertex (`higher`).
 * Triangles that use a vertex twice have collapsed into a line and are left out.
 */
interface SortedSides {
  readonly starts: Uint32Array
  readonly higher: Uint32Array
  readonly sides: Uint32Array
  readonly collapsed: number
}

/** Above this many sides on one vertex, sorting keys beats sorting by insertion. */
const FEW = 48

/**
 * One counting pass by lower vertex, then a short sort per vertex: linear for any mesh whose
 * vertices have few neighbours.
 */
export function sortSides(mesh: Mesh): SortedSides {
  const { indices } = mesh
  const starts = new Uint32Array(mesh.positions.length / 3 + 1)
  let collapsed = 0
  for (let i = 0; i < indices.length; i += 3) {
    const a = indices[i]!
    const b = indices[i + 1]!
    const c = indices[i + 2]!
    if (a === b || b === c || c === a) {
      collapsed++
      continue
    }
    starts[a < b ? a : b]!++
    starts[b < c ? b : c]!++
    starts[c < a ? c : a]!++
  }
  let total = 0
  for (let v = 0; v < starts.length; v++) {
    total += starts[v]!
    starts[v] = total
  }
  const higher = new Uint32Array(total)
  const sides = new Uint32Array(total)
  const put = (side: number, from: number, to: number) => {
    const up = from < to
    const at = --starts[up ? from : to]!
    higher[at] = up ? to : from
    sides[at] = 2 * side + (up ? 1 : 0)
  }
  // Backwards, so that sides of one vertex end up in the order of their triangles.
  for (let i = indices.length - 3; i >= 0; i -= 3) {
    const a = indices[i]!
    const b = indices[i + 1]!
    const c = indices[i + 2]!
    if (a === b || b === c || c === a) continue
    put(i + 2, c, a)
    put(i + 1, b, c)
    put(i, a, b)
  }
  for (let v = 0; v + 1 < starts.length; v++) sortRun(higher, sides, starts[v]!, starts[v + 1]!)
  return { starts, higher, sides, collapsed }
}

/**
 * Sorts one vertex's sides by higher vertex, keeping the order of their triangles where that is the
 * same.
 */
function sortRun(higher: Uint32Array, sides: Uint32Array, start: number, end: number): void {
  if (end - start > FEW) {
    // One number a side, so that the fast sort of a typed array does it: a file of one facet four
    // million times takes 1 s, by comparing pairs 10 s. Both factors stay far below the 2^53 that a
    // double counts to.
    const length = end - start
    const keys = new Float64Array(length)
    for (let i = 0; i < length; i++) keys[i] = higher[start + i]! * length + i
    keys.sort()
    const before = sides.slice(start, end)
    for (let i = 0; i < length; i++) {
      const vertex = Math.floor(keys[i]! / length)
      higher[start + i] = vertex
      sides[start + i] = before[keys[i]! - vertex * length]!
    }
    return
  }
  for (let i = start + 1; i < end; i++) {
    const key = higher[i]!
    const side = sides[i]!
    let j = i - 1
    while (j >= start && higher[j]! > key) {
      higher[j + 1] = higher[j]!
      sides[j + 1] = sides[j]!
      j--
    }
    higher[j + 1] = key
    sides[j + 1] = side
  }
}
