import type { BorrowedList } from '../model/borrowed.ts'
import type { LineKind } from '../model/toolpath.ts'
import type { LayerMoves } from './layerMoves.ts'
import { planLength } from './layerMoves.ts'
import type { Meeting, Nearby } from './nearby.ts'
import { nearbyLines } from './nearby.ts'
import type { Run } from './runs.ts'
import { runsOf } from './runs.ts'

/** A layer's lines, found again by place and by the run they belong to. */
export interface LayerLines {
  readonly moves: LayerMoves
  readonly runs: readonly Run[]
  /** Numbers of the moves that lay a line. */
  readonly lines: readonly number[]
  /** Per move the number of its run, −1 for one that lays no line. */
  readonly runOf: Int32Array
  readonly nearby: Nearby
  readonly heightMm: number
}

/** Looks at a layer; `kinds` and `widths` (mm) per move. */
export type LookAtLayer = (
  layer: LayerLines,
  kinds: readonly (LineKind | null)[],
  widths: Float64Array,
) => void

export function linesOf(moves: LayerMoves, heightMm: number): LayerLines {
  const runs = runsOf(moves)
  const runOf = new Int32Array(moves.count).fill(-1)
  const lines: number[] = []
  runs.forEach(({ first, end }, r) => {
    for (let i = first; i < end; i++) {
      runOf[i] = r
      lines.push(i)
    }
  })
  return { moves, runs, lines, runOf, nearby: nearbyLines(moves, lines), heightMm }
}

export const isClosed = ({ runs, runOf }: LayerLines, move: number): boolean =>
  runs[runOf[move]!]?.closed === true

/** Lines that lean less against each other run side by side: cos 20°. */
const PARALLEL = Math.cos(Math.PI / 9)

export function runsAlong({ moves }: LayerLines, a: number, b: number): boolean {
  const { fromX, fromY, toX, toY } = moves
  const [ax, ay] = [toX[a]! - fromX[a]!, toY[a]! - fromY[a]!]
  const [bx, by] = [toX[b]! - fromX[b]!, toY[b]! - fromY[b]!]
  return Math.abs(ax * bx + ay * by) > PARALLEL * Math.hypot(ax, ay) * Math.hypot(bx, by)
}

/**
 * What a ray square to a line meets, at `share` of its length, to the left (1) or to the right
 * (−1).
 */
export function beside(
  { moves, nearby }: LayerLines,
  move: number,
  share: number,
  side: 1 | -1,
  reachMm: number,
): BorrowedList<Meeting> {
  const { fromX, fromY, toX, toY } = moves
  const [dx, dy] = [toX[move]! - fromX[move]!, toY[move]! - fromY[move]!]
  const length = planLength(moves, move)
  return nearby.along(
    fromX[move]! + share * dx,
    fromY[move]! + share * dy,
    (-side * dy) / length,
    (side * dx) / length,
    reachMm,
  )
}

/** How wide each line is: its section ÷ the layer's height. 0 for a move that lays none. mm */
export function widthsOf({ moves, lines, heightMm }: LayerLines, sectionMm2: number): Float64Array {
  const widths = new Float64Array(moves.count)
  for (const move of lines) {
    const perLength = moves.laidMm[move]! / planLength(moves, move)
    widths[move] = (perLength * sectionMm2) / heightMm
  }
  return widths
}
