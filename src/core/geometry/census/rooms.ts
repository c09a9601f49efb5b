import type { RowSet } from './rowSet.ts'

/** A region taken apart into connected pieces. */
export interface Pieces {
  readonly count: number
  /** Piece number of each stretch of the region. */
  readonly label: Int32Array
  /** Summed stretch length of each piece; × pitch is its area. mm */
  readonly rowLengthMm: Float64Array
}

/** Connected pieces: stretches of neighbouring rows that overlap belong together (union-find, near-linear). */
export function separatePieces(region: RowSet): Pieces {
  const { start, spans } = region
  const count = spans.length / 2
  const parent = new Int32Array(count)
  for (let i = 0; i < count; i++) parent[i] = i
  const find = (i: number): number => {
    let root = i
    while (parent[root] !== root) root = parent[root]!
    while (parent[i] !== root) {
      const next = parent[i]!
      parent[i] = root
      i = next
    }
    return root
  }
  for (let row = 1; row + 1 < start.length; row++) {
    let i = start[row - 1]!
    let j = start[row]!
    const iEnd = start[row]!
    const jEnd = start[row + 1]!
    while (i < iEnd && j < jEnd) {
      if (spans[2 * i]! < spans[2 * j + 1]! && spans[2 * j]! < spans[2 * i + 1]!) {
        const a = find(i)
        const b = find(j)
        if (a !== b) parent[Math.max(a, b)] = Math.min(a, b)
      }
      if (spans[2 * i + 1]! < spans[2 * j + 1]!) i++
      else j++
    }
  }
  const label = new Int32Array(count)
  const lengths: number[] = []
  for (let i = 0; i < count; i++) {
    const root = find(i)
    if (root === i) {
      label[i] = lengths.length
      lengths.push(0)
    } else {
      label[i] = label[root]!
    }
    lengths[label[i]!]! += spans[2 * i + 1]! - spans[2 * i]!
  }
  return { count: lengths.length, label, rowLengthMm: Float64Array.from(lengths) }
}

/** The region without its pieces smaller than `leastAreaMm2`. */
export function dropSmallPieces(
  region: RowSet,
  pieces: Pieces,
  pitchMm: number,
  leastAreaMm2: number,
): RowSet {
  const small = (label: number): boolean => pieces.rowLengthMm[label]! * pitchMm < leastAreaMm2
  let any = false
  for (let i = 0; i < pieces.count && !any; i++) any = small(i)
  if (!any) return region
  const start = new Int32Array(region.start.length)
  const spans: number[] = []
  for (let row = 0; row + 1 < start.length; row++) {
    for (let i = region.start[row]!; i < region.start[row + 1]!; i++) {
      if (!small(pieces.label[i]!)) spans.push(region.spans[2 * i]!, region.spans[2 * i + 1]!)
    }
    start[row + 1] = spans.length / 2
  }
  return { start, spans: Float64Array.from(spans) }
}

/** How lines along the rows meet the boundary of a region. */
export interface Boundary {
  /** The boundary projected across the rows: both ends of every row's stretches × pitch. mm */
  readonly seenMm: number
  /** Length of that boundary along itself, where it leads from one row's end to the next row's. mm */
  readonly walkMm: number
}

/** A wall flatter than this against the rows is not followed: the nozzle lifts over or starts anew. Sideways step per pitch. */
const STEEPEST_WALK = 3

/**
 * Measures the boundary from the stretch ends. An end is followed to the next row when a stretch of the same side starts
 * within one pitch sideways (a wall at 45° or steeper to the rows); the walk then has the slanted length, else only the rise.
 */
export function measureBoundary(region: RowSet, pitchMm: number): Boundary {
  const { start, spans } = region
  const reach = STEEPEST_WALK * pitchMm
  let walk = 0
  for (let side = 0; side < 2; side++) {
    for (let row = 0; row + 1 < start.length; row++) {
      let j = row + 2 < start.length ? start[row + 1]! : start[row]!
      const jEnd = row + 2 < start.length ? start[row + 2]! : j
      for (let i = start[row]!; i < start[row + 1]!; i++) {
        const at = spans[2 * i + side]!
        while (j < jEnd && spans[2 * j + side]! < at - reach) j++
        const step = j < jEnd ? spans[2 * j + side]! - at : Infinity
        walk += step <= reach ? Math.hypot(step, pitchMm) : pitchMm
      }
    }
  }
  return { seenMm: spans.length * pitchMm, walkMm: walk }
}
