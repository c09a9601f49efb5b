import type { RowSet } from './rowSet.ts'
import { isEmpty } from './rowSet.ts'
import type { ScanGrid } from './scanGrid.ts'
import { SCAN_TILT_DEG } from './scanGrid.ts'

/**
 * Lines as a printer lays them, straight along x or along y, where the scan rows stand askew. `rows` hold the lines in order
 * across: line j lies at `lowMm` + (j + ½)·`lineMm`, its stretches run along t. For `along` 0 a place is x = t, y = c; for
 * `along` 1 it is x = c, y = −t.
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
 * Fills a region with lines, the first half a line width inside its edge. Each line climbs through the askew rows one after
 * the other and takes from each the stretches that lie within half a pitch of it: an edge along the lines is met to half a
 * pitch, any other exactly enough. Gaps shorter than a line's way through one row are such edges met by chance, not gaps.
 */
export function straighten(region: RowSet, grid: ScanGrid, lineMm: number): StraightLines {
  const { along, pitchMm, originMm } = grid
  const { start, spans } = region
  const rows = start.length - 1
  const none = {
    along,
    lineMm,
    lowMm: 0,
    rows: { start: new Int32Array(1), spans: new Float64Array(0) },
  }
  if (isEmpty(region)) return none
  // Along v the frame is mirrored, so that lines climb the same way through the rows.
  const sense = along === 0 ? 1 : -1
  const at = (row: number): number => (originMm + (row + 0.5) * pitchMm) * COS
  let low = Infinity
  let high = -Infinity
  for (let row = 0; row < rows; row++) {
    const first = start[row]!
    const last = start[row + 1]! - 1
    if (last < first) continue
    const a = sense * spans[2 * first]! * SIN
    const b = sense * spans[2 * last + 1]! * SIN
    low = Math.min(low, at(row) + Math.min(a, b))
    high = Math.max(high, at(row) + Math.max(a, b))
  }
  const count = Math.max(0, Math.ceil((high - low) / lineMm - 0.5))
  const lines: number[][] = Array.from({ length: count }, () => [])
  const half = (pitchMm / 2) * COS
  const gap = (pitchMm * COS) / SIN
  let most = 0
  for (let row = rows - 1; row >= 0; row--) {
    const here = at(row)
    const begin = start[row]!
    const end = start[row + 1]!
    for (let k = 0; k < end - begin; k++) {
      const i = sense > 0 ? begin + k : end - 1 - k
      const from = sense > 0 ? spans[2 * i]! : -spans[2 * i + 1]!
      const to = sense > 0 ? spans[2 * i + 1]! : -spans[2 * i]!
      const first = Math.max(0, Math.ceil((from * SIN + here - half - low) / lineMm - 0.5))
      const past = Math.min(count, Math.ceil((to * SIN + here + half - low) / lineMm - 0.5))
      for (let j = first; j < past; j++) {
        const middle = (low + (j + 0.5) * lineMm - here) / SIN
        const a = Math.max(from, middle - gap / 2)
        const b = Math.min(to, middle + gap / 2)
        if (b <= a) continue
        const line = lines[j]!
        if (line.length > 0 && a - line[line.length - 1]! < gap) line[line.length - 1] = b
        else {
          line.push(a, b)
          most++
        }
      }
    }
  }
  const out = { start: new Int32Array(count + 1), spans: new Float64Array(2 * most) }
  let written = 0
  lines.forEach((line, j) => {
    const shift = (low + (j + 0.5) * lineMm) * (SIN / COS)
    for (const u of line) out.spans[written++] = u / COS - shift
    out.start[j + 1] = written / 2
  })
  return { along, lineMm, lowMm: low, rows: out }
}
