import type { LineKind } from '../model/toolpath.ts'
import type { LayerLines } from './layerLines.ts'
import { beside, isClosed, runsAlong } from './layerLines.ts'
import { planLength } from './layerMoves.ts'
import type { WallCount } from './wallCount.ts'
import { countWalls } from './wallCount.ts'

/** Lines whose middles are no further apart than so many widths touch. */
const TOUCHING = 1.35

const KINDS = ['outer', 'inner', 'skin', 'infill', 'gap'] as const satisfies readonly LineKind[]

/** A layer's lines with what each is for. */
export interface JudgedLines {
  /** Per move; null for one that lays no line. */
  readonly kinds: readonly (LineKind | null)[]
  readonly walls: WallCount
}

/**
 * What each line of a layer is for, from where it lies alone. Closed loops are walls; open lines
 * with their like beside them are skin; those between two wall lines fill a gap; the others are
 * infill. What is too short to have neighbours goes with the rest of its run.
 */
export function judgeLines(layer: LayerLines, widths: Float64Array): JudgedLines {
  const { moves, runs, runOf, lines } = layer
  const walls = countWalls(layer, widths)
  const kinds: (LineKind | null)[] = Array.from({ length: moves.count }, () => null)
  const votes = runs.map(() => new Float64Array(KINDS.length))
  for (const move of lines) {
    const run = runOf[move]!
    if (runs[run]!.closed) {
      kinds[move] = walls.isOuter[run] ? 'outer' : 'inner'
      continue
    }
    const length = planLength(moves, move)
    if (length < 1.5 * widths[move]!) continue
    const kind = judgeOpen(layer, move, TOUCHING * widths[move]!)
    kinds[move] = kind
    votes[run]![KINDS.indexOf(kind)]! += length
  }
  for (const move of lines) {
    if (kinds[move] !== null) continue
    const own = votes[runOf[move]!]!
    const most = own.indexOf(Math.max(...own))
    kinds[move] = own[most]! > 0 ? KINDS[most]! : judgeOpen(layer, move, TOUCHING * widths[move]!)
  }
  return { kinds, walls }
}

function judgeOpen(layer: LayerLines, move: number, reachMm: number): LineKind {
  let besideWalls = 0
  for (const side of [1, -1] as const) {
    const next = beside(layer, move, 0.5, side, reachMm).find((meeting) =>
      runsAlong(layer, move, meeting.move),
    )
    if (!next) continue
    if (!isClosed(layer, next.move)) return 'skin'
    besideWalls++
  }
  return besideWalls === 2 ? 'gap' : 'infill'
}
