import type { LayerMoves } from './layerMoves.ts'
import { laysLine, planLength } from './layerMoves.ts'

/** Lines laid without a break. */
export interface Run {
  /** First and one past the last of its moves; all of them lay a line. */
  readonly first: number
  readonly end: number
  readonly lengthMm: number
  /** Comes round to where it began, turned once. */
  readonly closed: boolean
}

/** A loop may stop so far before its start, so that its seam does not bulge. mm */
const SEAM_MM = 0.8
/** And must be so many times longer. */
const LEAST_LOOP = 4

/** The runs of a layer, in order. */
export function runsOf(moves: LayerMoves): readonly Run[] {
  const runs: Run[] = []
  let first = -1
  for (let i = 0; i <= moves.count; i++) {
    const goesOn = i < moves.count && laysLine(moves, i)
    if (goesOn && first >= 0 && !joined(moves, i - 1, i)) {
      runs.push(runOf(moves, first, i))
      first = i
    } else if (goesOn && first < 0) first = i
    else if (!goesOn && first >= 0) {
      runs.push(runOf(moves, first, i))
      first = -1
    }
  }
  return runs
}

const joined = (moves: LayerMoves, before: number, after: number): boolean =>
  moves.toX[before] === moves.fromX[after] && moves.toY[before] === moves.fromY[after]

function runOf(moves: LayerMoves, first: number, end: number): Run {
  let lengthMm = 0
  for (let i = first; i < end; i++) lengthMm += planLength(moves, i)
  const gap = Math.hypot(
    moves.toX[end - 1]! - moves.fromX[first]!,
    moves.toY[end - 1]! - moves.fromY[first]!,
  )
  const round = gap < SEAM_MM && lengthMm > LEAST_LOOP * Math.max(gap, 0.25) && end - first >= 3
  return { first, end, lengthMm, closed: round && turnsOnce(moves, first, end) }
}

/** Whether a path, closed by the straight to its start, turns once round in all. */
function turnsOnce(moves: LayerMoves, first: number, end: number): boolean {
  let turned = 0
  let [lastX, lastY] = [0, 0]
  const turnTo = (dx: number, dy: number): void => {
    if (Math.hypot(dx, dy) < 1e-3) return
    if (lastX !== 0 || lastY !== 0) {
      turned += Math.atan2(lastX * dy - lastY * dx, lastX * dx + lastY * dy)
    }
    lastX = dx
    lastY = dy
  }
  for (let i = first; i < end; i++) {
    turnTo(moves.toX[i]! - moves.fromX[i]!, moves.toY[i]! - moves.fromY[i]!)
  }
  turnTo(moves.fromX[first]! - moves.toX[end - 1]!, moves.fromY[first]! - moves.toY[end - 1]!)
  turnTo(moves.toX[first]! - moves.fromX[first]!, moves.toY[first]! - moves.fromY[first]!)
  return Math.abs(Math.abs(turned) - 2 * Math.PI) < 0.5
}
