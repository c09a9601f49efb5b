import { rowAbove, type ScanGrid, type ScannedRegion } from '../rows/scanGrid.ts'
import type { Edges } from '../rows/edgeBand.ts'
import type { Outline } from './simplify.ts'

/** What of an outline bounds the solid; see `CutLayer`. */
export interface BareEdges {
  readonly outline: Outline
  readonly edges: Edges
  readonly hiddenMm: number
}

/**
 * Tells what of the contours of bodies that reach into one another bounds the solid they make
 * together: what lies inside of others has no wall along it.
 *
 * Nothing is intersected, so nothing can fail: an edge bounds the solid in those rows of which its
 * crossing ends a stretch. It is asked of the rows that it runs across, and told within half a row.
 * An edge between two rows goes on as the one before it.
 */
export function bareEdges(
  outline: Outline,
  scans: readonly [ScannedRegion, ScannedRegion],
  grids: readonly [ScanGrid, ScanGrid],
): BareEdges {
  const [{ ends: alongU }, { ends: alongV }] = scans
  const whole = { outline, edges: allOf(outline), hiddenMm: 0 }
  if (!alongU || !alongV) return whole
  const seen = rowsSeen(outline, [alongU, alongV], scans)
  const left = createContours()
  const closed = createContours()
  const paths = createContours()
  let hiddenMm = 0
  for (let c = 0; c + 1 < outline.start.length; c++) {
    const begin = outline.start[c]!
    const end = outline.start[c + 1]!
    const { turns, isBare } = followContour(outline, begin, end, seen, grids)
    if (turns.length === 0) {
      if (!(isBare ?? !isWithin(outline, begin, scans[0], grids[0]))) continue
      left.add(outline.points.subarray(2 * begin, 2 * end))
      closed.add(outline.points.subarray(2 * begin, 2 * end))
      continue
    }
    left.add(outline.points.subarray(2 * begin, 2 * end))
    hiddenMm += lengthMm(outline.points.subarray(2 * begin, 2 * end), true)
    for (const [k, from] of turns.entries()) {
      if (!from.isBare) continue
      const part = pathBetween(outline, begin, end, from, turns[(k + 1) % turns.length]!)
      hiddenMm -= lengthMm(part, false)
      paths.add(thereAndBack(part))
    }
  }
  if (closed.length() === outline.points.length) return whole
  return {
    outline: left.finish(),
    edges: together(closed.finish(), paths.finish()),
    hiddenMm: Math.max(0, hiddenMm),
  }
}

const allOf = (outline: Outline): Edges => ({ ...outline, closed: outline.start.length - 1 })

function together(closed: Outline, paths: Outline): Edges {
  const points = new Float64Array(closed.points.length + paths.points.length)
  points.set(closed.points)
  points.set(paths.points, closed.points.length)
  const start = new Int32Array(closed.start.length + paths.start.length - 1)
  start.set(closed.start)
  start.set(
    paths.start.subarray(1).map((at) => at + closed.points.length / 2),
    closed.start.length,
  )
  return { points, start, closed: closed.start.length - 1 }
}

/** Rows in which an edge bounds the solid, of the grid it is asked of: `starts` of `rows`. */
interface SeenRows {
  readonly askedOf: Uint8Array
  readonly starts: Int32Array
  readonly rows: Int32Array
}

function rowsSeen(
  { points, start }: Outline,
  ends: readonly [Int32Array, Int32Array],
  scans: readonly [ScannedRegion, ScannedRegion],
): SeenRows {
  const count = points.length / 2
  const askedOf = new Uint8Array(count)
  for (let c = 0; c + 1 < start.length; c++) {
    let before = start[c + 1]! - 1
    for (let i = start[c]!; i < start[c + 1]!; before = i++) {
      const du = Math.abs(points[2 * i]! - points[2 * before]!)
      const dv = Math.abs(points[2 * i + 1]! - points[2 * before + 1]!)
      askedOf[i] = dv >= du ? 0 : 1
    }
  }
  const eachEnd = (tell: (edge: number, row: number) => void): void => {
    for (const along of [0, 1] as const) {
      const rows = scans[along].region.start
      for (let row = 0; row + 1 < rows.length; row++) {
        for (let k = 2 * rows[row]!; k < 2 * rows[row + 1]!; k++) {
          const edge = ends[along][k]!
          if (askedOf[edge] === along) tell(edge, row)
        }
      }
    }
  }
  const starts = new Int32Array(count + 1)
  eachEnd((edge) => starts[edge + 1]!++)
  for (let i = 0; i < count; i++) starts[i + 1]! += starts[i]!
  const rows = new Int32Array(starts[count]!)
  const next = starts.slice()
  eachEnd((edge, row) => (rows[next[edge]!++] = row))
  return { askedOf, starts, rows }
}

/** Where on its way a contour begins or ends to bound the solid. */
interface Turn {
  /** The point that the edge leads to. */
  readonly edge: number
  /** On that edge. mm */
  readonly u: number
  readonly v: number
  /** Share of the edge, 0–1. */
  readonly at: number
  readonly isBare: boolean
}

/** `isBare`: how the contour ends, undefined where it meets no row. */
function followContour(
  { points }: Outline,
  begin: number,
  end: number,
  { askedOf, starts, rows }: SeenRows,
  grids: readonly [ScanGrid, ScanGrid],
): { readonly turns: readonly Turn[]; readonly isBare: boolean | undefined } {
  const turns: Turn[] = []
  let isBare: boolean | undefined
  let first: Turn | undefined
  let before = end - 1
  for (let i = begin; i < end; before = i++) {
    const { originMm, pitchMm, rows: most } = grids[askedOf[i]!]!
    const across = 1 - askedOf[i]!
    const from = points[2 * before + across]!
    const to = points[2 * i + across]!
    const a = clamp(rowAbove(from, originMm, pitchMm), most)
    const b = clamp(rowAbove(to, originMm, pitchMm), most)
    if (a === b) continue
    const step = a < b ? 1 : -1
    const firstRow = a < b ? a : a - 1
    let k = step > 0 ? starts[i]! : starts[i + 1]! - 1
    const seenRows = starts[i + 1]! - starts[i]!
    // Most edges bound the solid in all of their rows or in none.
    const isEven = seenRows === 0 || (seenRows === Math.abs(b - a) && isOnce(rows, starts, i))
    for (let row = firstRow, left = Math.abs(b - a); left > 0; row += step, left--) {
      const bare = seenRows > 0 && k >= starts[i]! && k < starts[i + 1]! && rows[k] === row
      // An edge may end two stretches that touch in a row.
      while (k >= starts[i]! && k < starts[i + 1]! && rows[k] === row) k += step
      if (bare !== isBare) {
        const between = originMm + (step > 0 ? row : row + 1) * pitchMm
        const share = row === firstRow ? 0 : (between - from) / (to - from)
        const at = Math.min(1, Math.max(0, share))
        const turn = turnOn(points, before, i, at, bare)
        if (isBare === undefined) first = turn
        else turns.push(turn)
        isBare = bare
      }
      if (isEven) break
    }
  }
  if (first && first.isBare !== isBare) turns.unshift(first)
  return { turns, isBare }
}

function turnOn(
  points: Outline['points'],
  before: number,
  edge: number,
  at: number,
  isBare: boolean,
): Turn {
  const u = points[2 * before]!
  const v = points[2 * before + 1]!
  return {
    edge,
    u: u + at * (points[2 * edge]! - u),
    v: v + at * (points[2 * edge + 1]! - v),
    at,
    isBare,
  }
}

/** Whether no row stands twice among those of an edge. */
function isOnce(rows: Int32Array, starts: Int32Array, edge: number): boolean {
  const first = starts[edge]!
  const last = starts[edge + 1]! - 1
  const between = rows[last]! - rows[first]!
  return between === last - first
}

const clamp = (row: number, rows: number): number => (row < 0 ? 0 : row > rows ? rows : row)

/** Points from one turn to the next along a contour. */
function pathBetween(
  { points }: Outline,
  begin: number,
  end: number,
  from: Turn,
  to: Turn,
): Float64Array {
  const path = [from.u, from.v]
  let i = from.edge
  const isBehind = from.edge === to.edge && to.at <= from.at
  for (let left = end - begin; left > 0 && (i !== to.edge || (isBehind && left === end - begin));) {
    path.push(points[2 * i]!, points[2 * i + 1]!)
    i = i + 1 < end ? i + 1 : begin
    left--
  }
  path.push(to.u, to.v)
  return Float64Array.from(path)
}

/** A path as a contour that comes back on itself, whose band is the path's. */
function thereAndBack(path: Float64Array): Float64Array {
  const count = path.length / 2
  const both = new Float64Array(2 * (2 * count - 2))
  both.set(path)
  for (let i = count - 2, at = 2 * count; i > 0; i--, at += 2) {
    both[at] = path[2 * i]!
    both[at + 1] = path[2 * i + 1]!
  }
  return both
}

function lengthMm(path: Float64Array, isClosed: boolean): number {
  let sum = 0
  for (let i = isClosed ? 0 : 2; i < path.length; i += 2) {
    const before = i > 0 ? i - 2 : path.length - 2
    sum += Math.hypot(path[i]! - path[before]!, path[i + 1]! - path[before + 1]!)
  }
  return sum
}

/** Whether a contour too small for any row lies in what the rows enclose. */
function isWithin(
  { points }: Outline,
  point: number,
  { region: { start, spans } }: ScannedRegion,
  { rows, originMm, pitchMm, along }: ScanGrid,
): boolean {
  const row = Math.floor((points[2 * point + 1 - along]! - originMm) / pitchMm)
  if (row < 0 || row >= rows) return false
  const at = points[2 * point + along]!
  for (let k = start[row]!; k < start[row + 1]!; k++) {
    if (spans[2 * k]! < at - pitchMm && spans[2 * k + 1]! > at + pitchMm) return true
  }
  return false
}

function createContours() {
  const starts = [0]
  const contours: Float64Array[] = []
  let length = 0
  return {
    length: () => length,
    add(contour: Float64Array): void {
      contours.push(contour)
      length += contour.length
      starts.push(length / 2)
    },
    finish(): Outline {
      const points = new Float64Array(length)
      contours.forEach((contour, i) => points.set(contour, 2 * starts[i]!))
      return { points, start: Int32Array.from(starts) }
    },
  }
}
