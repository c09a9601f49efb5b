import type { Move } from '../model/toolpath.ts'

/** The moves of one layer in their order, in columns. Lengths mm. */
export interface LayerMoves {
  readonly topMm: number
  readonly count: number
  readonly fromX: Float64Array
  readonly fromY: Float64Array
  readonly fromZ: Float64Array
  readonly toX: Float64Array
  readonly toY: Float64Array
  readonly toZ: Float64Array
  readonly filamentMm: Float64Array
  readonly laidMm: Float64Array
  readonly speedMmS: Float64Array
  readonly accelMmS2: Float64Array
}

const COLUMNS = [
  'fromX',
  'fromY',
  'fromZ',
  'toX',
  'toY',
  'toZ',
  'filamentMm',
  'laidMm',
  'speedMmS',
  'accelMmS2',
] as const

/**
 * A layer of more is handed on in pieces, so that a file takes no more room; a solid bed of 250 mm
 * has fewer.
 */
export const MOST_MOVES = 1 << 19
/** Heights nearer than this are one layer. mm */
const SAME_HEIGHT_MM = 0.005
/** A line shorter than this is a blob. mm */
const SHORTEST_MM = 1e-4

/** Length in plan. */
export const planLength = (moves: LayerMoves, i: number): number =>
  Math.hypot(moves.toX[i]! - moves.fromX[i]!, moves.toY[i]! - moves.fromY[i]!)

/** Whether a move lays a line. */
export const laysLine = (moves: LayerMoves, i: number): boolean =>
  moves.laidMm[i]! > 0 && planLength(moves, i) > SHORTEST_MM

/**
 * Gathers moves and hands them on a layer at a time: a layer ends where the next line is laid at
 * another height, or has so many moves. The columns are used again for the next one.
 */
export function layerGatherer(onLayer: (moves: LayerMoves) => void): {
  readonly add: (move: Move) => void
  readonly end: () => void
} {
  let room = 4096
  let columns = eachColumn(() => new Float64Array(room))
  let count = 0
  let topMm = NaN

  const hand = (): void => {
    onLayer({ topMm, count, ...columns })
    count = 0
  }
  return {
    add(move) {
      const lays =
        move.laidMm > 0 && Math.hypot(move.toX - move.fromX, move.toY - move.fromY) > SHORTEST_MM
      if (lays) {
        if (count > 0 && Math.abs(move.toZ - topMm) > SAME_HEIGHT_MM) hand()
        topMm = move.toZ
      }
      if (count === MOST_MOVES) hand()
      if (count === room) {
        room *= 2
        columns = eachColumn((key) => {
          const grown = new Float64Array(room)
          grown.set(columns[key])
          return grown
        })
      }
      for (const key of COLUMNS) columns[key][count] = move[key]
      count++
    },
    end() {
      if (count > 0) hand()
    },
  }
}

/** A layer that stays as it is when the next one is gathered. */
export function copyMoves(moves: LayerMoves): LayerMoves {
  const { topMm, count } = moves
  return { topMm, count, ...eachColumn((key) => moves[key].slice(0, count)) }
}

type Columns = Record<(typeof COLUMNS)[number], Float64Array>

const eachColumn = (make: (key: keyof Columns) => Float64Array): Columns =>
  Object.fromEntries(COLUMNS.map((key) => [key, make(key)])) as Columns
