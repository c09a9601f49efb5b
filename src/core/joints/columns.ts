import { flatAxes } from '../mesh/holes/fitCircle.ts'
import type { Mesh, Vec3 } from '../model/mesh.ts'
import { dot } from '../model/vectors.ts'

/** A solid looked at along one direction: what a straight through it meets. mm */
export interface Columns {
  readonly direction: Vec3
  /** Least and greatest of right, up and height of its corners. */
  readonly box: readonly [x0: number, x1: number, y0: number, y1: number, h0: number, h1: number]
  /**
   * Heights where the straight over (x, y) enters and leaves the solid, in pairs from below.
   */
  spansAt(x: number, y: number): readonly number[]
}

/** Off the places where drawings have their edges, by less than any figure shows. mm */
const ASIDE = [3.1e-7, 1.7e-7] as const

/** @param mesh in mm, faced outwards. Time and memory linear in its triangles. */
export function columnsOf(mesh: Mesh, direction: Vec3): Columns {
  const { right, up } = flatAxes(direction)
  const { positions, indices } = mesh
  const vertices = positions.length / 3
  const xs = new Float64Array(vertices)
  const ys = new Float64Array(vertices)
  const hs = new Float64Array(vertices)
  for (let v = 0; v < vertices; v++) {
    const [x, y, z] = [positions[3 * v]!, positions[3 * v + 1]!, positions[3 * v + 2]!]
    xs[v] = x * right[0] + y * right[1] + z * right[2]
    ys[v] = x * up[0] + y * up[1] + z * up[2]
    hs[v] = x * direction[0] + y * direction[1] + z * direction[2]
  }
  let [x0, x1, y0, y1, h0, h1] = [Infinity, -Infinity, Infinity, -Infinity, Infinity, -Infinity]
  for (const v of indices) {
    x0 = Math.min(x0, xs[v]!)
    x1 = Math.max(x1, xs[v]!)
    y0 = Math.min(y0, ys[v]!)
    y1 = Math.max(y1, ys[v]!)
    h0 = Math.min(h0, hs[v]!)
    h1 = Math.max(h1, hs[v]!)
  }
  const triangles = indices.length / 3
  const side = Math.max(1, Math.min(128, Math.ceil(Math.sqrt(triangles / 2))))
  const columnOf = (x: number) => clamp(Math.floor(((x - x0) / (x1 - x0 || 1)) * side), side)
  const rowOf = (y: number) => clamp(Math.floor(((y - y0) / (y1 - y0 || 1)) * side), side)
  const starts = new Uint32Array(side * side + 1)
  const eachCell = (t: number, visit: (cell: number) => void) => {
    const [a, b, c] = [indices[3 * t]!, indices[3 * t + 1]!, indices[3 * t + 2]!]
    // Seen edge-on it is met by no straight.
    if (twiceArea(a, b, c) === 0) return
    const last = rowOf(Math.max(ys[a]!, ys[b]!, ys[c]!))
    for (let row = rowOf(Math.min(ys[a]!, ys[b]!, ys[c]!)); row <= last; row++) {
      // Of a long thin triangle only what crosses this row; a rounding wider, so that no cell is
      // missed.
      const low = y0 + (row - 0.001) * cellY
      const high = y0 + (row + 1.001) * cellY
      reach[0] = Infinity
      reach[1] = -Infinity
      crossRow(a, b, low, high)
      crossRow(b, c, low, high)
      crossRow(c, a, low, high)
      const far = columnOf(reach[1])
      for (let column = columnOf(reach[0]); column <= far; column++) visit(row * side + column)
    }
  }
  const cellY = (y1 - y0 || 1) / side
  const slack = 1e-6 * (x1 - x0)
  /** Least and greatest x so far. */
  const reach: [number, number] = [0, 0]
  const crossRow = (a: number, b: number, low: number, high: number) => {
    const [from, to] = ys[a]! < ys[b]! ? [a, b] : [b, a]
    if (ys[from]! > high || ys[to]! < low) return
    const rise = ys[to]! - ys[from]!
    const slope = rise > 0 ? (xs[to]! - xs[from]!) / rise : 0
    const first = xs[from]! + slope * Math.max(0, low - ys[from]!)
    const second = xs[to]! - slope * Math.max(0, ys[to]! - high)
    reach[0] = Math.min(reach[0], first - slack, second - slack)
    reach[1] = Math.max(reach[1], first + slack, second + slack)
  }
  const twiceArea = (a: number, b: number, c: number): number =>
    (xs[b]! - xs[a]!) * (ys[c]! - ys[a]!) - (ys[b]! - ys[a]!) * (xs[c]! - xs[a]!)
  for (let t = 0; t < triangles; t++) eachCell(t, (cell) => starts[cell + 1]!++)
  for (let cell = 0; cell < side * side; cell++) starts[cell + 1]! += starts[cell]!
  const filled = starts.slice()
  const lists = new Uint32Array(starts.at(-1)!)
  for (let t = 0; t < triangles; t++) eachCell(t, (cell) => (lists[filled[cell]!++] = t))

  /** Heights from below, and 1 where the straight enters, −1 where it leaves. */
  const heights: number[] = []
  const turns: number[] = []
  return {
    direction,
    box: [x0, x1, y0, y1, h0, h1],
    spansAt(atX, atY) {
      const x = atX + ASIDE[0]
      const y = atY + ASIDE[1]
      if (x < x0 || x > x1 || y < y0 || y > y1) return NONE
      const cell = rowOf(y) * side + columnOf(x)
      heights.length = 0
      turns.length = 0
      for (let n = starts[cell]!; n < starts[cell + 1]!; n++) {
        const t = 3 * lists[n]!
        const [a, b, c] = [indices[t]!, indices[t + 1]!, indices[t + 2]!]
        const u = (xs[b]! - x) * (ys[c]! - y) - (xs[c]! - x) * (ys[b]! - y)
        const v = (xs[c]! - x) * (ys[a]! - y) - (xs[a]! - x) * (ys[c]! - y)
        const w = (xs[a]! - x) * (ys[b]! - y) - (xs[b]! - x) * (ys[a]! - y)
        const isInside = (u >= 0 && v >= 0 && w >= 0) || (u <= 0 && v <= 0 && w <= 0)
        const whole = u + v + w
        if (!isInside || whole === 0) continue
        const height = (u * hs[a]! + v * hs[b]! + w * hs[c]!) / whole
        let place = heights.length
        while (place > 0 && heights[place - 1]! > height) {
          heights[place] = heights[place - 1]!
          turns[place] = turns[place - 1]!
          place--
        }
        heights[place] = height
        // Facing down it is entered from below.
        turns[place] = whole < 0 ? 1 : -1
      }
      return spansOf(heights, turns)
    },
  }
}

const NONE: readonly number[] = []

const clamp = (place: number, side: number): number => Math.max(0, Math.min(side - 1, place))

function spansOf(heights: readonly number[], turns: readonly number[]): readonly number[] {
  const spans: number[] = []
  let depth = 0
  for (let n = 0; n < heights.length; n++) {
    const before = depth
    depth += turns[n]!
    if ((before <= 0 && depth > 0) || (before > 0 && depth <= 0)) spans.push(heights[n]!)
  }
  return spans.length % 2 === 0 ? spans : spans.slice(0, -1)
}

/** How much of a column's spans lies between two heights. */
export function filledBetween(spans: readonly number[], low: number, high: number): number {
  let sum = 0
  for (let i = 0; i < spans.length; i += 2) {
    sum += Math.max(0, Math.min(high, spans[i + 1]!) - Math.max(low, spans[i]!))
  }
  return sum
}

/** Where a point lies in the columns' own axes: right, up, height. */
export function inColumns({ direction }: Columns, point: Vec3): Vec3 {
  const { right, up } = flatAxes(direction)
  return [dot(point, right), dot(point, up), dot(point, direction)]
}
