import type { Borrowed } from '../../model/borrowed.ts'
import type { LayerCut } from './planeCutter.ts'

/** The outlines of one layer, as polylines in the scan frame. */
export interface Contours {
  /** u, v per point, stride 2, mm. */
  readonly points: Float64Array
  /**
   * First point of each contour; one entry more than there are contours. Every contour closes on
   * its first point.
   */
  readonly start: Int32Array
  /**
   * Area by Green's theorem over all contours: exact where no contour crosses or covers another.
   * mm²
   */
  readonly signedAreaMm2: number
  /** Total length of the gaps that had to be bridged because the mesh is open. mm */
  readonly bridgedMm: number
  /** Total length of the contours, bridges included. mm */
  readonly lengthMm: number
}

/**
 * Joins the loose segments of a cut into closed contours. Ends meet when they lie on the same mesh
 * edge, so no tolerance decides; a start is paired with an end first, and only what is left over
 * (flipped triangles) start with start. Ends that then stay alone belong to holes in the mesh: each
 * is bridged straight to the nearest lone end.
 */
export function joinContours(cut: LayerCut): Contours {
  const mate = pairEnds(cut)
  const lone: number[] = []
  for (let end = 0; end < mate.length; end++) if (mate[end]! < 0) lone.push(end)
  const bridgedMm = lone.length > 0 ? bridgeNearest(cut, lone, mate) : 0
  return walk(cut, mate, bridgedMm)
}

/** For each segment end (2·segment + 0 for start, 1 for end) the end it meets, or −1. */
function pairEnds(cut: LayerCut): Int32Array {
  const { count, edges } = cut
  const ends = count * 2
  const mate = new Int32Array(ends).fill(-1)
  let size = 16
  while (size < ends * 2) size *= 2
  const mask = size - 1
  const slots = new Int32Array(size) // end + 1, 0 when free
  for (let end = 0; end < ends; end++) {
    const low = edges[2 * end]!
    const high = edges[2 * end + 1]!
    let slot = hash(low, high) & mask
    for (;;) {
      const other = slots[slot]! - 1
      if (other < 0) {
        slots[slot] = end + 1
        break
      }
      if (
        mate[other]! < 0 &&
        (other ^ end) & 1 &&
        edges[2 * other] === low &&
        edges[2 * other + 1] === high
      ) {
        mate[other] = end
        mate[end] = other
        break
      }
      slot = (slot + 1) & mask
    }
  }
  pairLeftovers(edges, mate)
  return mate
}

/**
 * Neighbouring triangles that face opposite ways put two starts (or two ends) on one edge: pair
 * those too.
 */
function pairLeftovers(edges: Borrowed<Int32Array>, mate: Int32Array): void {
  const waiting = new Map<string, number>()
  for (let end = 0; end < mate.length; end++) {
    if (mate[end]! >= 0) continue
    const key = `${edges[2 * end]!},${edges[2 * end + 1]!}`
    const other = waiting.get(key)
    if (other === undefined) {
      waiting.set(key, end)
    } else {
      mate[other] = end
      mate[end] = other
      waiting.delete(key)
    }
  }
}

function hash(a: number, b: number): number {
  let h = Math.imul(a, 0x9e3779b1) ^ Math.imul(b, 0x85ebca6b)
  h ^= h >>> 15
  h = Math.imul(h, 0x2c1b3c6d)
  return (h ^ (h >>> 13)) >>> 0
}

/**
 * Lone ends beyond this many are joined in the order found: the layer is in pieces and marked
 * doubtful anyway.
 */
const MOST_LONE_ENDS = 1500
/**
 * A run no longer than this × the gap between its ends is all but straight: closed on itself it
 * encloses nothing.
 */
const STRAIGHT = 1.05

/**
 * Joins lone ends, nearest first. An end meets a start, as in a mesh whose triangles agree, and a
 * straight run is not closed on itself, while there is another way: two walls of a box that lacks
 * the other two belong together.
 */
function bridgeNearest(cut: LayerCut, lone: readonly number[], mate: Int32Array): number {
  const { points } = cut
  const runs = followRuns(cut, lone, mate)
  let bridged = 0
  const join = (a: number, b: number): void => {
    mate[a] = b
    mate[b] = a
    const distance = gapMm(points, a, b)
    bridged += distance
    const one = runs.get(a)!
    const other = runs.get(b)!
    if (one.far === b) return
    const lengthMm = one.lengthMm + distance + other.lengthMm
    runs.set(one.far, { far: other.far, lengthMm })
    runs.set(other.far, { far: one.far, lengthMm })
  }
  const isPoor = (a: number, b: number, distance: number): boolean => {
    if (((a ^ b) & 1) === 0) return true
    const { far, lengthMm } = runs.get(a)!
    return far === b && lengthMm <= STRAIGHT * distance
  }
  const isLone = (end: number): boolean => mate[end]! < 0
  if (lone.length <= MOST_LONE_ENDS) {
    visitPairs(points, lone, isLone, (a, b, distance) => {
      if (!isPoor(a, b, distance)) join(a, b)
    })
    visitPairs(points, lone, isLone, join)
  }
  // Ends come in pairs (two a segment), so the rest pairs up whole.
  let previous = -1
  for (const end of lone) {
    if (mate[end]! >= 0) continue
    if (previous < 0) {
      previous = end
    } else {
      join(previous, end)
      previous = -1
    }
  }
  return bridged
}

function gapMm(points: Borrowed<Float64Array>, a: number, b: number): number {
  const u = points[2 * a]! - points[2 * b]!
  const v = points[2 * a + 1]! - points[2 * b + 1]!
  return Math.sqrt(u * u + v * v)
}

/**
 * Radius of the first ring of pairs, in mean distances between ends along u; each next ring is so
 * many times as wide.
 */
const FIRST_RING = 4
const WIDER = 4

/**
 * Shows every pair of ends that are both still `isLone`, nearest first, equally near ones in the
 * order of the list. Pairs are looked up ring by ring: most gaps are short, and few ends are left
 * for the long ones.
 */
function visitPairs(
  points: Borrowed<Float64Array>,
  ends: readonly number[],
  isLone: (end: number) => boolean,
  visit: (a: number, b: number, distance: number) => void,
): void {
  // By u, so that only what lies within the ring along u is looked at.
  let left = ends
    .map((end, place) => ({ end, place, u: points[2 * end]! }))
    .filter(({ end }) => isLone(end))
    .sort((p, q) => p.u - q.u)
  if (left.length < 2) return
  const width = left[left.length - 1]!.u - left[0]!.u
  let inner = -1
  let outer = (FIRST_RING * width) / left.length || Infinity
  while (left.length > 1) {
    const pairs: { a: number; b: number; i: number; j: number; distance: number }[] = []
    // From one end to the other is no farther than across all: then this is the last ring.
    let beyond = false
    for (let p = 0; p < left.length; p++) {
      const one = left[p]!
      for (let q = p + 1; q < left.length; q++) {
        const other = left[q]!
        if (other.u - one.u > outer) {
          beyond = true
          break
        }
        const distance = gapMm(points, one.end, other.end)
        if (distance > outer) beyond = true
        if (distance <= inner || distance > outer) continue
        const [a, b] = one.place < other.place ? [one, other] : [other, one]
        pairs.push({ a: a.end, b: b.end, i: a.place, j: b.place, distance })
      }
    }
    pairs.sort((p, q) => p.distance - q.distance || p.i - q.i || p.j - q.j)
    for (const { a, b, distance } of pairs) if (isLone(a) && isLone(b)) visit(a, b, distance)
    if (!beyond) return
    left = left.filter(({ end }) => isLone(end))
    inner = outer
    outer *= WIDER
  }
}

/**
 * For each lone end: the lone end at the other end of its run of segments, and how long the run is.
 */
function followRuns(
  { points }: LayerCut,
  lone: readonly number[],
  mate: Int32Array,
): Map<number, { readonly far: number; readonly lengthMm: number }> {
  const runs = new Map<number, { readonly far: number; readonly lengthMm: number }>()
  for (const end of lone) {
    if (runs.has(end)) continue
    let lengthMm = 0
    let far = end
    for (;;) {
      const near = far
      far ^= 1
      lengthMm += Math.hypot(
        points[2 * near]! - points[2 * far]!,
        points[2 * near + 1]! - points[2 * far + 1]!,
      )
      if (mate[far]! < 0) break
      far = mate[far]!
    }
    runs.set(end, { far, lengthMm })
    runs.set(far, { far: end, lengthMm })
  }
  return runs
}

/** Follows the pairs around; a contour runs the way most of its length is directed. */
function walk(cut: LayerCut, mate: Int32Array, bridgedMm: number): Contours {
  const { count, points } = cut
  const seen = new Uint8Array(count)
  const out = new Float64Array(count * 4)
  const start: number[] = [0]
  let written = 0
  let area = 0
  let length = bridgedMm
  for (let first = 0; first < count; first++) {
    if (seen[first]) continue
    const begin = written
    let segment = first
    let enter = 0
    let forward = 0
    do {
      seen[segment] = 1
      const from = 2 * segment + enter
      const to = from ^ 1
      const fu = points[2 * from]!
      const fv = points[2 * from + 1]!
      const tu = points[2 * to]!
      const tv = points[2 * to + 1]!
      const size = Math.sqrt((tu - fu) * (tu - fu) + (tv - fv) * (tv - fv))
      length += size
      forward += enter === 0 ? size : -size
      // The far end is the next segment's near end, unless a bridge lies between.
      out[written++] = fu
      out[written++] = fv
      const next = mate[to]!
      if (points[2 * next] !== tu || points[2 * next + 1] !== tv) {
        out[written++] = tu
        out[written++] = tv
      }
      segment = next >> 1
      enter = next & 1
    } while (!seen[segment])
    if (forward < 0) reverse(out, begin, written)
    area += greenArea(out, begin, written)
    start.push(written / 2)
  }
  return {
    points: out.subarray(0, written),
    start: new Int32Array(start),
    signedAreaMm2: area,
    bridgedMm,
    lengthMm: length,
  }
}

function reverse(points: Float64Array, begin: number, end: number): void {
  for (let i = begin, j = end - 2; i < j; i += 2, j -= 2) {
    const u = points[i]!
    const v = points[i + 1]!
    points[i] = points[j]!
    points[i + 1] = points[j + 1]!
    points[j] = u
    points[j + 1] = v
  }
}

/**
 * Signed area of one closed contour, relative to its first point so that it stays exact far from
 * the origin.
 */
export function greenArea(points: Float64Array, begin: number, end: number): number {
  const u0 = points[begin]!
  const v0 = points[begin + 1]!
  let twice = 0
  for (let i = begin + 2; i + 3 < end; i += 2) {
    twice +=
      (points[i]! - u0) * (points[i + 3]! - v0) - (points[i + 2]! - u0) * (points[i + 1]! - v0)
  }
  return twice / 2
}
