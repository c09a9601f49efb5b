import type { RowSet } from '../rows/rowSet.ts'
import { isEmpty } from '../rows/rowSet.ts'
import type { ScanGrid } from '../rows/scanGrid.ts'
import { SCAN_TILT_DEG } from '../rows/scanGrid.ts'

/**
 * Lines as a printer lays them, straight along x or along y, where the scan rows stand askew.
 * `rows` hold the lines in order across: line j lies at `lowMm` + (j + ½)·`lineMm`, its stretches
 * run along t. For `along` 0 a place is x = t, y = c; for `along` 1 it is x = c, y = −t.
 */
export interface StraightLines {
  readonly along: 0 | 1
  readonly lineMm: number
  readonly lowMm: number
  readonly rows: RowSet
}

const SIN = Math.sin((SCAN_TILT_DEG * Math.PI) / 180)
const COS = Math.cos((SCAN_TILT_DEG * Math.PI) / 180)

/**
 * Fills a region with lines, the first half a line width inside its edge. Each line climbs through
 * the askew rows one after the other and takes from each the stretches that lie within half a pitch
 * of it: an edge along the lines is met to half a pitch, any other exactly enough. Gaps shorter
 * than a line's way through one row are such edges met by chance, not gaps, unless the row itself
 * has most of the gap: a hole.
 */
export function straighten(region: RowSet, grid: ScanGrid, lineMm: number): StraightLines {
  const { along, pitchMm, originMm } = grid
  const { start, spans } = region
  const rows = start.length - 1
  // Along v the frame is mirrored, so that lines climb the same way through the rows.
  const mirrored = along === 1
  const [low, high] = isEmpty(region) ? [0, 0] : extentAcross(region, grid)
  const count = Math.max(0, Math.ceil((high - low) / lineMm - 0.5))
  const half = (pitchMm / 2) * COS
  const halfWay = half / SIN
  const gap = 2 * halfWay
  const openFrom = new Float64Array(count)
  const openTo = new Float64Array(count).fill(-Infinity)
  const done = createStretches(count)
  // Along a row, the next line is met so much further on.
  const apart = lineMm / SIN
  for (let row = rows - 1; row >= 0; row--) {
    const here = (originMm + (row + 0.5) * pitchMm) * COS
    const begin = start[row]!
    const end = start[row + 1]!
    let before = Infinity
    for (let k = begin; k < end; k++) {
      const i = mirrored ? begin + end - 1 - k : k
      const from = mirrored ? -spans[2 * i + 1]! : spans[2 * i]!
      const to = mirrored ? -spans[2 * i]! : spans[2 * i + 1]!
      const first = Math.max(0, Math.ceil((from * SIN + here - half - low) / lineMm - 0.5))
      const past = Math.min(count, Math.ceil((to * SIN + here + half - low) / lineMm - 0.5))
      let middle = (low + (first + 0.5) * lineMm - here) / SIN
      for (let j = first; j < past; j++, middle += apart) {
        const a = middle - halfWay > from ? middle - halfWay : from
        const b = middle + halfWay < to ? middle + halfWay : to
        if (b <= a) continue
        const was = openTo[j]!
        const short = a - was
        const passed = before > was ? before : was
        if (short >= gap || (a === from && a - passed > short / 2)) {
          if (was > -Infinity) done.add(j, openFrom[j]!, was)
          openFrom[j] = a
        }
        openTo[j] = b
      }
      before = to
    }
  }
  for (let j = 0; j < count; j++) {
    if (openTo[j]! > -Infinity) done.add(j, openFrom[j]!, openTo[j]!)
  }
  const toLine = (j: number, u: number): number => (u - (low + (j + 0.5) * lineMm) * SIN) / COS
  return { along, lineMm, lowMm: low, rows: done.sorted(toLine) }
}

/** Where a region begins and ends across the lines. */
function extentAcross({ start, spans }: RowSet, grid: ScanGrid): [low: number, high: number] {
  const sense = grid.along === 0 ? SIN : -SIN
  let low = Infinity
  let high = -Infinity
  for (let row = 0; row + 1 < start.length; row++) {
    const first = start[row]!
    const last = start[row + 1]! - 1
    if (last < first) continue
    const here = (grid.originMm + (row + 0.5) * grid.pitchMm) * COS
    const a = sense * spans[2 * first]!
    const b = sense * spans[2 * last + 1]!
    low = Math.min(low, here + Math.min(a, b))
    high = Math.max(high, here + Math.max(a, b))
  }
  return [low, high]
}

/** Stretches of numbered lines, each line's in order, those of different lines mixed. */
function createStretches(lines: number): {
  add(line: number, from: number, to: number): void
  sorted(place: (line: number, u: number) => number): RowSet
} {
  const start = new Int32Array(lines + 1)
  let line = new Int32Array(2 * lines)
  let ends = new Float64Array(4 * lines)
  let count = 0
  return {
    add(j, from, to) {
      if (count === line.length) {
        line = grown(line, new Int32Array(2 * count + 16))
        ends = grown(ends, new Float64Array(4 * count + 32))
      }
      line[count] = j
      ends[2 * count] = from
      ends[2 * count + 1] = to
      start[j + 1]!++
      count++
    },
    sorted(place) {
      for (let j = 0; j < lines; j++) start[j + 1]! += start[j]!
      const next = start.slice(0, lines)
      const spans = new Float64Array(2 * count)
      for (let i = 0; i < count; i++) {
        const j = line[i]!
        const slot = next[j]!++
        spans[2 * slot] = place(j, ends[2 * i]!)
        spans[2 * slot + 1] = place(j, ends[2 * i + 1]!)
      }
      return { start, spans }
    },
  }
}

function grown<T extends Int32Array | Float64Array>(from: T, to: T): T {
  to.set(from)
  return to
}
