import type { RowSet } from './rowSet.ts'
import { createRowWriter, emptyRows, isEmpty } from './rowSet.ts'

/** What lies in both. */
export function intersectRows(a: RowSet, b: RowSet): RowSet {
  if (a === b) return a
  const rows = a.start.length - 1
  if (isEmpty(a) || isEmpty(b)) return emptyRows(rows)
  const out = createRowWriter(rows, a.spans.length / 2)
  for (let row = 0; row < rows; row++) {
    let i = a.start[row]! * 2
    let j = b.start[row]! * 2
    const iEnd = a.start[row + 1]! * 2
    const jEnd = b.start[row + 1]! * 2
    while (i < iEnd && j < jEnd) {
      const aTo = a.spans[i + 1]!
      const bTo = b.spans[j + 1]!
      out.add(Math.max(a.spans[i]!, b.spans[j]!), Math.min(aTo, bTo))
      if (aTo < bTo) i += 2
      else j += 2
    }
    out.endRow()
  }
  return out.finish()
}

/** What lies in `a` and not in `b`. */
export function subtractRows(a: RowSet, b: RowSet): RowSet {
  const rows = a.start.length - 1
  if (a === b) return emptyRows(rows)
  if (isEmpty(a) || isEmpty(b)) return a
  const out = createRowWriter(rows, a.spans.length / 2)
  for (let row = 0; row < rows; row++) {
    let j = b.start[row]! * 2
    const jEnd = b.start[row + 1]! * 2
    for (let i = a.start[row]! * 2; i < a.start[row + 1]! * 2; i += 2) {
      let from = a.spans[i]!
      const to = a.spans[i + 1]!
      while (j < jEnd && b.spans[j + 1]! <= from) j += 2
      let k = j
      while (k < jEnd && b.spans[k]! < to) {
        out.add(from, b.spans[k]!)
        from = b.spans[k + 1]!
        k += 2
      }
      out.add(from, to)
    }
    out.endRow()
  }
  return out.finish()
}

/** What lies in either. */
export function uniteRows(a: RowSet, b: RowSet): RowSet {
  if (a === b || isEmpty(b)) return a
  if (isEmpty(a)) return b
  const rows = a.start.length - 1
  const out = createRowWriter(rows, (a.spans.length + b.spans.length) / 2)
  for (let row = 0; row < rows; row++) {
    let i = a.start[row]! * 2
    let j = b.start[row]! * 2
    const iEnd = a.start[row + 1]! * 2
    const jEnd = b.start[row + 1]! * 2
    while (i < iEnd || j < jEnd) {
      if (j >= jEnd || (i < iEnd && a.spans[i]! <= b.spans[j]!)) {
        out.add(a.spans[i]!, a.spans[i + 1]!)
        i += 2
      } else {
        out.add(b.spans[j]!, b.spans[j + 1]!)
        j += 2
      }
    }
    out.endRow()
  }
  return out.finish()
}
