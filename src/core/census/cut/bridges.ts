import type { CutLayer, Grids } from './cutLayer.ts'
import { subtractRows, uniteRows } from '../rows/rowAlgebra.ts'
import type { RowSet } from '../rows/rowSet.ts'
import { emptyRows, isEmpty } from '../rows/rowSet.ts'
import type { ScanGrid } from '../rows/scanGrid.ts'

/**
 * A line laid freely across a gap this wide, held at both ends, sags little enough (common
 * practice, no source). mm
 */
export const LONGEST_BRIDGE_MM = 10
/**
 * In a gap a bridge could cross, a ledge this deep holds on from one side, as round the top of a
 * lying hole (common practice, no source). mm
 */
const DEEPEST_LEDGE_MM = 0.8
/** Ends closer than this meet. mm */
const MEETS_MM = 0.02

/**
 * The parts of a layer that hang over the one beneath and still need no support, on the rows along
 * u: lines across a gap between two sides, whichever of the two scan directions they are laid in.
 */
export function findBridges(layer: CutLayer, beneath: CutLayer, grids: Grids): RowSet {
  const alongU = bridgedSpans(layer.rows[0], beneath.rows[0], grids[0].pitchMm)
  const alongV = bridgedSpans(layer.rows[1], beneath.rows[1], grids[1].pitchMm)
  return uniteRows(alongU, turnRows(alongV, grids[1], grids[0]))
}

function bridgedSpans(layer: RowSet, beneath: RowSet, pitchMm: number): RowSet {
  const rows = layer.start.length - 1
  const beyond = subtractRows(layer, beneath)
  if (isEmpty(beyond) || isEmpty(beneath)) return emptyRows(rows)
  const how = judgeSpans(beyond, beneath)
  for (let row = 1; row < rows; row++) spread(beyond, how, row, 1, pitchMm)
  for (let row = rows - 2; row >= 0; row--) spread(beyond, how, row, -1, pitchMm)
  const start = new Int32Array(rows + 1)
  const spans = new Float64Array(beyond.spans.length)
  let written = 0
  for (let row = 0; row < rows; row++) {
    for (let j = beyond.start[row]!; j < beyond.start[row + 1]!; j++) {
      if (how[j] !== BRIDGE && how[j] !== LEDGE) continue
      spans[written++] = beyond.spans[2 * j]!
      spans[written++] = beyond.spans[2 * j + 1]!
    }
    start[row + 1] = written / 2
  }
  return { start, spans: spans.slice(0, written) }
}

const LOOSE = 0
/** Held at one end, or at both too far apart. */
const HELD = 1
const LEDGE = 2
const BRIDGE = 3

function judgeSpans(beyond: RowSet, beneath: RowSet): Uint8Array {
  const rows = beyond.start.length - 1
  const how = new Uint8Array(beyond.spans.length / 2).fill(LOOSE)
  for (let row = 0; row < rows; row++) {
    const first = 2 * beneath.start[row]!
    const last = 2 * beneath.start[row + 1]!
    let right = first
    for (let j = beyond.start[row]!; j < beyond.start[row + 1]!; j++) {
      const from = beyond.spans[2 * j]!
      const to = beyond.spans[2 * j + 1]!
      while (right < last && beneath.spans[right]! < from) right += 2
      // The gap in the layer beneath that this stretch lies in.
      const gapFrom = right > first ? beneath.spans[right - 1]! : -Infinity
      const gapTo = right < last ? beneath.spans[right]! : Infinity
      const heldLeft = from - gapFrom < MEETS_MM
      const heldRight = gapTo - to < MEETS_MM
      if (!heldLeft && !heldRight) continue
      how[j] = HELD
      if (gapTo - gapFrom > LONGEST_BRIDGE_MM) continue
      if (heldLeft && heldRight) how[j] = BRIDGE
      else if (to - from <= DEEPEST_LEDGE_MM) how[j] = LEDGE
    }
  }
  return how
}

/**
 * Where a bridge runs askew to the rows, its free edge cuts its corners off: a stretch held at one
 * end beside a bridge, and shorter with each row on (`step` +1 or −1), belongs to it. A shelf along
 * a wall keeps its depth, so it does not.
 */
function spread(beyond: RowSet, how: Uint8Array, row: number, step: 1 | -1, pitchMm: number): void {
  const { start, spans } = beyond
  for (let j = start[row]!; j < start[row + 1]!; j++) {
    if (how[j] !== HELD) continue
    const from = spans[2 * j]!
    const to = spans[2 * j + 1]!
    const beside = overlapping(beyond, row - step, from, to)
    if (!beside.some((other) => how[other] === BRIDGE)) continue
    const longest = overlapping(beyond, row + step, from, to).reduce(
      (most, other) => Math.max(most, spans[2 * other + 1]! - spans[2 * other]!),
      0,
    )
    if (to - from - longest > LEAST_SHRINK * pitchMm) how[j] = BRIDGE
  }
}

function overlapping({ start, spans }: RowSet, row: number, from: number, to: number): number[] {
  const found: number[] = []
  if (row < 0 || row + 1 >= start.length) return found
  for (let j = start[row]!; j < start[row + 1]!; j++) {
    if (spans[2 * j]! <= to && spans[2 * j + 1]! >= from) found.push(j)
  }
  return found
}

/** A bridge's free edge takes off at least this many pitches a row. */
const LEAST_SHRINK = 0.3

/**
 * A region scanned one way, on the rows of the other way: each stretch becomes a strip one pitch
 * wide.
 */
function turnRows(region: RowSet, from: ScanGrid, to: ScanGrid): RowSet {
  if (isEmpty(region)) return emptyRows(to.rows)
  const start = new Int32Array(to.rows + 1)
  const firstRow = (at: number) => Math.max(0, Math.ceil((at - to.originMm) / to.pitchMm - 0.5))
  const pastRow = (at: number) =>
    Math.min(to.rows, Math.ceil((at - to.originMm) / to.pitchMm - 0.5))
  const visit = (put: (row: number, strip: number) => void): void => {
    for (let strip = 0; strip < from.rows; strip++) {
      for (let i = 2 * region.start[strip]!; i < 2 * region.start[strip + 1]!; i += 2) {
        const past = pastRow(region.spans[i + 1]!)
        for (let row = firstRow(region.spans[i]!); row < past; row++) put(row, strip)
      }
    }
  }
  // Strips come in order, so each row fills from the left; strips side by side make one stretch.
  const ends = new Int32Array(to.rows).fill(-2)
  visit((row, strip) => {
    if (ends[row] !== strip - 1) start[row + 1]!++
    ends[row] = strip
  })
  for (let row = 0; row < to.rows; row++) start[row + 1]! += start[row]!
  const spans = new Float64Array(2 * start[to.rows]!)
  const next = start.slice(0, to.rows)
  ends.fill(-2)
  visit((row, strip) => {
    if (ends[row] !== strip - 1) {
      spans[2 * next[row]!] = from.originMm + strip * from.pitchMm
      next[row]!++
    }
    spans[2 * next[row]! - 1] = from.originMm + (strip + 1) * from.pitchMm
    ends[row] = strip
  })
  return { start, spans }
}
