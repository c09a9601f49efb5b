import type { Borrowed } from '../../model/borrowed.ts'
import type { Mesh } from '../../model/mesh.ts'
import type { LayerPlan } from './layerPlan.ts'

/**
 * The cut of one layer as loose directed segments, the solid on their left, until the next is cut.
 */
export interface LayerCut {
  readonly count: number
  /** u, v of the start and of the end of each segment; stride 4; mm. */
  readonly points: Borrowed<Float64Array>
  /**
   * The mesh edge each end lies on, as its two vertex numbers, lower first: start then end; stride
   * 4.
   */
  readonly edges: Borrowed<Int32Array>
}

/**
 * Rotation of the scan frame against x and y. See `SCAN_TILT_DEG` in scanGrid.ts for why it is not
 * 0.
 */
export interface ScanFrame {
  readonly cos: number
  readonly sin: number
}

/**
 * Cuts a placed mesh (mm, lowest z at 0) layer by layer from the top down, in the tilted frame u =
 * x cos + y sin, v = −x sin + y cos.
 *
 * Every triangle waits in the bucket of its highest layer and stays active down to its lowest, so
 * the work is proportional to the number of segments. A vertex exactly on a cut counts as above it,
 * which keeps every contour closed.
 */
export function createPlaneCutter(
  mesh: Mesh,
  plan: LayerPlan,
  frame: ScanFrame,
): (layer: number) => LayerCut {
  const { positions, indices } = mesh
  const vertices = positions.length / 3
  const u = new Float64Array(vertices)
  const v = new Float64Array(vertices)
  const z = new Float64Array(vertices)
  for (let i = 0; i < vertices; i++) {
    const x = positions[3 * i]!
    const y = positions[3 * i + 1]!
    u[i] = x * frame.cos + y * frame.sin
    v[i] = y * frame.cos - x * frame.sin
    z[i] = positions[3 * i + 2]!
  }
  const { order, start, lowest } = bucketByTop(indices, z, plan)
  const active = new Int32Array(order.length)
  let activeCount = 0
  const cut = { count: 0, points: new Float64Array(1024), edges: new Int32Array(1024) }

  // Layers may be passed over, but never gone back to: what begins in one passed over is taken up
  // with the next.
  let takenFrom = order.length
  return (layer) => {
    for (let i = start[layer]!; i < takenFrom; i++) active[activeCount++] = order[i]!
    takenFrom = start[layer]!
    if (cut.points.length < activeCount * 4) {
      cut.points = new Float64Array(activeCount * 6)
      cut.edges = new Int32Array(activeCount * 6)
    }
    const { points, edges } = cut
    const height = plan.cutMm[layer]!
    let kept = 0
    let o = 0
    for (let i = 0; i < activeCount; i++) {
      const t = active[i]!
      if (lowest[t]! > layer) continue
      if (lowest[t]! < layer) active[kept++] = t
      const a = indices[3 * t]!
      const b = indices[3 * t + 1]!
      const c = indices[3 * t + 2]!
      const aUp = z[a]! >= height
      const bUp = z[b]! >= height
      const cUp = z[c]! >= height
      // The segment runs from the side walked downwards to the side walked upwards.
      let downFrom: number, downTo: number, upFrom: number, upTo: number
      if (aUp && !bUp) {
        downFrom = a
        downTo = b
      } else if (bUp && !cUp) {
        downFrom = b
        downTo = c
      } else {
        downFrom = c
        downTo = a
      }
      if (!aUp && bUp) {
        upFrom = a
        upTo = b
      } else if (!bUp && cUp) {
        upFrom = b
        upTo = c
      } else {
        upFrom = c
        upTo = a
      }
      // Lower vertex first, so that both triangles at an edge find the very same point.
      const d0 = downFrom < downTo ? downFrom : downTo
      const d1 = downFrom < downTo ? downTo : downFrom
      const e0 = upFrom < upTo ? upFrom : upTo
      const e1 = upFrom < upTo ? upTo : upFrom
      const dt = (height - z[d0]!) / (z[d1]! - z[d0]!)
      const et = (height - z[e0]!) / (z[e1]! - z[e0]!)
      points[o] = u[d0]! + dt * (u[d1]! - u[d0]!)
      points[o + 1] = v[d0]! + dt * (v[d1]! - v[d0]!)
      points[o + 2] = u[e0]! + et * (u[e1]! - u[e0]!)
      points[o + 3] = v[e0]! + et * (v[e1]! - v[e0]!)
      edges[o] = d0
      edges[o + 1] = d1
      edges[o + 2] = e0
      edges[o + 3] = e1
      o += 4
    }
    activeCount = kept
    cut.count = o / 4
    return cut
  }
}

/**
 * Triangles that any cut meets, sorted by the highest layer they meet; `lowest` is indexed by
 * triangle.
 */
function bucketByTop(
  indices: Uint32Array,
  z: Float64Array,
  plan: LayerPlan,
): { order: Int32Array; start: Int32Array; lowest: Int32Array } {
  const triangles = indices.length / 3
  const lowest = new Int32Array(triangles)
  const highest = new Int32Array(triangles)
  const start = new Int32Array(plan.count + 2)
  for (let t = 0; t < triangles; t++) {
    const za = z[indices[3 * t]!]!
    const zb = z[indices[3 * t + 1]!]!
    const zc = z[indices[3 * t + 2]!]!
    const low = firstCutAbove(plan, Math.min(za, zb, zc))
    const high = firstCutAbove(plan, Math.max(za, zb, zc)) - 1
    lowest[t] = low
    highest[t] = high
    if (high >= low) start[high + 1]!++
  }
  for (let layer = 0; layer <= plan.count; layer++) start[layer + 1]! += start[layer]!
  const next = start.slice()
  const order = new Int32Array(start[plan.count + 1]!)
  for (let t = 0; t < triangles; t++) {
    const high = highest[t]!
    if (high >= lowest[t]!) order[next[high]!++] = t
  }
  return { order, start, lowest }
}

/** Number of cuts at or below `z`, which is the index of the first cut above it. */
export function firstCutAbove(plan: LayerPlan, z: number): number {
  const { cutMm, count } = plan
  if (count === 0) return 0
  // Layers are even but for the first and last: guess, then step.
  const pitch = count > 2 ? (cutMm[count - 2]! - cutMm[0]!) / (count - 2) : 1
  let i = Math.min(count, Math.max(0, Math.floor((z - cutMm[0]!) / (pitch || 1)) + 1))
  while (i < count && cutMm[i]! <= z) i++
  while (i > 0 && cutMm[i - 1]! > z) i--
  return i
}
