import type { LayerLines } from './layerLines.ts'
import { beside, isClosed, runsAlong } from './layerLines.ts'
import { planLength } from './layerMoves.ts'

/** More wall lines than this side by side are some other thing. */
export const MOST_WALLS = 20
/** Loops are looked at so far apart. mm */
const SAMPLE_MM = 3
/** Fill is looked for so far behind the last wall line. mm */
const ROOM_MM = 8
/** Touching wall lines lie so many widths apart. */
const NEAREST = 0.55
const FURTHEST = 1.4

/** How many loops lie side by side, by length of outline. */
export interface WallCount {
  /** mm of outline by number of lines between air on one side and fill on the other. */
  readonly filled: Float64Array
  /** The same between air and air: two walls back to back, or one too thin for that. */
  readonly thin: Float64Array
  /** Per run. */
  readonly isOuter: readonly boolean[]
}

interface End {
  readonly lines: number
  readonly last: number
  readonly filled: boolean
}

export function countWalls(layer: LayerLines, widths: Float64Array): WallCount {
  const filled = new Float64Array(MOST_WALLS + 1)
  const thin = new Float64Array(MOST_WALLS + 1)
  const outer = new Float64Array(layer.runs.length)
  const inner = new Float64Array(layer.runs.length)
  let sinceMm = 0
  for (const move of layer.lines) {
    if (!isClosed(layer, move)) continue
    const length = planLength(layer.moves, move)
    sinceMm += length
    if (sinceMm < SAMPLE_MM) continue
    const samples = Math.max(1, Math.floor(length / SAMPLE_MM))
    for (let k = 0; k < samples; k++) {
      const share = (k + 0.5) / samples
      const left = endOf(layer, move, share, 1, widths)
      const right = endOf(layer, move, share, -1, widths)
      const lines = left.lines + right.lines + 1
      if (lines > MOST_WALLS) continue
      const weight = sinceMm / samples / lines
      const own = layer.runOf[move]!
      if (left.filled === right.filled) {
        if (!left.filled) thin[lines]! += weight
        outer[layer.runOf[left.last]!]! += weight / 2
        outer[layer.runOf[right.last]!]! += weight / 2
        if (left.last !== move && right.last !== move) inner[own]! += weight
        continue
      }
      filled[lines]! += weight
      const edge = left.filled ? right.last : left.last
      outer[layer.runOf[edge]!]! += weight
      if (edge !== move) inner[own]! += weight
    }
    sinceMm = 0
  }
  return { filled, thin, isOuter: layer.runs.map((_, r) => outer[r]! > inner[r]!) }
}

/** Follows touching loops from a line to one side as far as they go. */
function endOf(
  layer: LayerLines,
  move: number,
  share: number,
  side: 1 | -1,
  widths: Float64Array,
): End {
  let last = move
  let lines = 0
  let atMm = 0
  for (const { move: next, distanceMm } of beside(layer, move, share, side, ROOM_MM)) {
    const gapMm = distanceMm - atMm
    const touchMm = (widths[last]! + widths[next]!) / 2
    if (gapMm < NEAREST * touchMm && runsAlong(layer, move, next)) continue
    if (!isClosed(layer, next)) return { lines, last, filled: true }
    if (gapMm > FURTHEST * touchMm || !runsAlong(layer, move, next)) break
    last = next
    atMm = distanceMm
    lines++
  }
  return { lines, last, filled: false }
}
