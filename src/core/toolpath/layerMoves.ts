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
 * another height. The columns are used again for the next one.
 */
export function layerGatherer(onLayer: (moves: LayerMoves) => void): {
  readonly add: (move: Move) => void
  readonly end: () => void
} {
  let room = 4096
  let columns = COLUMNS.map(() => new Float64Array(room))
  let count = 0
  let topMm = NaN

  const hand = (): void => {
    const [fromX, fromY, fromZ, toX, toY, toZ, filamentMm, laidMm, speedMmS, accelMmS2] =
      columns as [
        Float64Array,
        Float64Array,
        Float64Array,
        Float64Array,
        Float64Array,
        Float64Array,
        Float64Array,
        Float64Array,
        Float64Array,
        Float64Array,
      ]
    onLayer({
      topMm,
      count,
      fromX,
      fromY,
      fromZ,
      toX,
      toY,
      toZ,
      filamentMm,
      laidMm,
      speedMmS,
      accelMmS2,
    })
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
      if (count === room) {
        room *= 2
        columns = columns.map((column) => {
          const grown = new Float64Array(room)
          grown.set(column)
          return grown
        })
      }
      COLUMNS.forEach((key, k) => {
        columns[k]![count] = move[key]
      })
      count++
    },
    end() {
      if (count > 0) hand()
    },
  }
}

/** A layer that stays as it is when the next one is gathered. */
export function copyMoves(moves: LayerMoves): LayerMoves {
  const own = (column: Float64Array): Float64Array => column.slice(0, moves.count)
  return {
    topMm: moves.topMm,
    count: moves.count,
    fromX: own(moves.fromX),
    fromY: own(moves.fromY),
    fromZ: own(moves.fromZ),
    toX: own(moves.toX),
    toY: own(moves.toY),
    toZ: own(moves.toZ),
    filamentMm: own(moves.filamentMm),
    laidMm: own(moves.laidMm),
    speedMmS: own(moves.speedMmS),
    accelMmS2: own(moves.accelMmS2),
  }
}
