import type { BorrowedRows, RowSet } from './rowSet.ts'
import { copyRows, emptyRows, isEmpty, LEAST_SPAN_MM } from './rowSet.ts'
import { createScratch } from './scratch.ts'

const scratch = createScratch()
const spare = createScratch()

/** What lies in all of them: `region` and every cover. */
export function intersectAll(region: RowSet, covers: readonly RowSet[]): RowSet {
  const rows = region.start.length - 1
  if (covers.some(isEmpty)) return emptyRows(rows)
  let most = region.spans.length
  for (const cover of covers) most += cover.spans.length
  let start = region.start
  let spans = region.spans
  covers.forEach((cover, i) => {
    const space = i % 2 === 0 ? scratch : spare
    const keptStart = space.ints(rows + 1)
    const kept = space.floats(most)
    intersect(start, spans, cover, rows, keptStart, kept)
    start = keptStart
    spans = kept
  })
  return { start: start.slice(0, rows + 1), spans: spans.slice(0, 2 * start[rows]!) }
}

/** Writes what lies in both. */
function intersect(
  start: Int32Array,
  spans: Float64Array,
  cover: RowSet,
  rows: number,
  keptStart: Int32Array,
  kept: Float64Array,
): void {
  const { start: coverStart, spans: coverSpans } = cover
  let written = 0
  let i = 0
  let j = 0
  keptStart[0] = 0
  for (let row = 0; row < rows; row++) {
    const iEnd = 2 * start[row + 1]!
    const jEnd = 2 * coverStart[row + 1]!
    while (i < iEnd && j < jEnd) {
      const aFrom = spans[i]!
      const aTo = spans[i + 1]!
      const bFrom = coverSpans[j]!
      const bTo = coverSpans[j + 1]!
      const from = aFrom > bFrom ? aFrom : bFrom
      const to = aTo < bTo ? aTo : bTo
      if (to - from >= LEAST_SPAN_MM) {
        kept[written++] = from
        kept[written++] = to
      }
      if (aTo < bTo) i += 2
      else j += 2
    }
    i = iEnd
    j = jEnd
    keptStart[row + 1] = written >> 1
  }
}

/** Row length of what lies in both, without working out where. mm */
export function sharedLengthMm(a: RowSet, b: RowSet): number {
  if (isEmpty(a) || isEmpty(b)) return 0
  let sum = 0
  for (let row = 0; row + 1 < a.start.length; row++) {
    let i = 2 * a.start[row]!
    let j = 2 * b.start[row]!
    const iEnd = 2 * a.start[row + 1]!
    const jEnd = 2 * b.start[row + 1]!
    while (i < iEnd && j < jEnd) {
      const aTo = a.spans[i + 1]!
      const bTo = b.spans[j + 1]!
      const from = a.spans[i]! > b.spans[j]! ? a.spans[i]! : b.spans[j]!
      const to = aTo < bTo ? aTo : bTo
      if (to > from) sum += to - from
      if (aTo < bTo) i += 2
      else j += 2
    }
  }
  return sum
}

/** What lies in `a` and not in `b`; where nothing is taken away it is `a` itself. */
export function subtractRows<A extends BorrowedRows>(a: A, b: BorrowedRows): A | RowSet {
  const rows = a.start.length - 1
  if (isEmpty(a) || isEmpty(b)) return a
  if (a.spans === b.spans) return emptyRows(rows)
  const start = new Int32Array(rows + 1)
  const out = scratch.floats(a.spans.length + b.spans.length)
  let written = 0
  for (let row = 0; row < rows; row++) {
    let j = b.start[row]! * 2
    const jEnd = b.start[row + 1]! * 2
    for (let i = a.start[row]! * 2; i < a.start[row + 1]! * 2; i += 2) {
      let from = a.spans[i]!
      const to = a.spans[i + 1]!
      while (j < jEnd && b.spans[j + 1]! <= from) j += 2
      for (let k = j; k < jEnd && b.spans[k]! < to; k += 2) {
        if (b.spans[k]! - from >= LEAST_SPAN_MM) {
          out[written++] = from
          out[written++] = b.spans[k]!
        }
        from = b.spans[k + 1]!
      }
      if (to - from >= LEAST_SPAN_MM) {
        out[written++] = from
        out[written++] = to
      }
    }
    start[row + 1] = written / 2
  }
  return { start, spans: out.slice(0, written) }
}

/** What lies in either. */
export function uniteRows(a: RowSet, b: BorrowedRows): RowSet {
  if (a === b || isEmpty(b)) return a
  if (isEmpty(a)) return copyRows(b)
  const rows = a.start.length - 1
  const start = new Int32Array(rows + 1)
  const out = scratch.floats(a.spans.length + b.spans.length)
  let written = 0
  for (let row = 0; row < rows; row++) {
    const begin = written
    let i = a.start[row]! * 2
    let j = b.start[row]! * 2
    const iEnd = a.start[row + 1]! * 2
    const jEnd = b.start[row + 1]! * 2
    while (i < iEnd || j < jEnd) {
      const takeA = j >= jEnd || (i < iEnd && a.spans[i]! <= b.spans[j]!)
      const from = takeA ? a.spans[i]! : b.spans[j]!
      const to = takeA ? a.spans[i + 1]! : b.spans[j + 1]!
      if (takeA) i += 2
      else j += 2
      if (written > begin && from <= out[written - 1]!) {
        if (to > out[written - 1]!) out[written - 1] = to
      } else {
        out[written++] = from
        out[written++] = to
      }
    }
    start[row + 1] = written / 2
  }
  return { start, spans: out.slice(0, written) }
}
