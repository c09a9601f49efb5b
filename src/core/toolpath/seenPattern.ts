import type { Pattern } from '../model/settings.ts'
import type { LayerMoves } from './layerMoves.ts'
import { planLength } from './layerMoves.ts'

const BINS = 36
const BIN_RAD = Math.PI / BINS
/** A direction counts in a layer where it has this share of the infill's length. */
const LEAST_SHARE = 0.12
/** Lines that turn by less than this from one to the next wind. */
const WINDING_RAD = (35 * Math.PI) / 180
/** Straight lines are longer. mm */
const SHORT_MM = 3

/** Which pattern the infill lines make, learned layer by layer. */
export interface PatternSeen {
  /** `inside`: per move, the share of an infill line that lies away from the walls. */
  readonly add: (moves: LayerMoves, inside: Float64Array) => void
  readonly pattern: () => Pattern | null
}

/**
 * Told by the directions a layer's straight lines have: one is `lines`, two are `grid`, three
 * `triangles`; by lines that wind gently (`gyroid`), or turn by 60° every few millimetres
 * (`honeycomb`).
 */
export function patternSeen(): PatternSeen {
  let windingMm = 0
  let sixtyMm = 0
  let allMm = 0
  const byDirections = new Float64Array(5)
  return {
    add(moves, inside) {
      const lengths = new Float64Array(BINS)
      let layerMm = 0
      for (let i = 0; i < moves.count; i++) {
        const length = planLength(moves, i) * inside[i]!
        if (length === 0) continue
        layerMm += length
        const angle = Math.atan2(moves.toY[i]! - moves.fromY[i]!, moves.toX[i]! - moves.fromX[i]!)
        if (length >= SHORT_MM) {
          lengths[((Math.floor((angle + 2 * Math.PI) / BIN_RAD) % BINS) + BINS) % BINS]! += length
        }
        if (i === 0 || inside[i - 1] === 0) continue
        const turn = turnBetween(moves, i - 1, i)
        if (turn > 0.01 && turn < WINDING_RAD && length < 2 * SHORT_MM) windingMm += length
        else if (Math.abs(turn - Math.PI / 3) < 0.2 && length < 15) sixtyMm += length
      }
      if (layerMm === 0) return
      allMm += layerMm
      byDirections[Math.min(4, directionsIn(lengths, layerMm))]! += layerMm
    },
    pattern() {
      if (allMm === 0) return null
      if (windingMm > 0.3 * allMm) return 'gyroid'
      if (sixtyMm > 0.4 * allMm) return 'honeycomb'
      const most = byDirections.indexOf(Math.max(...byDirections))
      return most >= 3 ? 'triangles' : most === 2 ? 'grid' : 'lines'
    },
  }
}

function turnBetween(moves: LayerMoves, a: number, b: number): number {
  const [ax, ay] = [moves.toX[a]! - moves.fromX[a]!, moves.toY[a]! - moves.fromY[a]!]
  const [bx, by] = [moves.toX[b]! - moves.fromX[b]!, moves.toY[b]! - moves.fromY[b]!]
  return Math.abs(Math.atan2(ax * by - ay * bx, ax * bx + ay * by))
}

/** Peaks of at least `LEAST_SHARE`, neighbours together. */
function directionsIn(lengths: Float64Array, allMm: number): number {
  let directions = 0
  const left = lengths.slice()
  for (;;) {
    const best = left.indexOf(Math.max(...left))
    let sum = 0
    for (const k of [best - 1, best, best + 1]) sum += left[(k + BINS) % BINS]!
    if (sum < LEAST_SHARE * allMm) return directions
    for (const k of [best - 1, best, best + 1]) left[(k + BINS) % BINS] = 0
    directions++
  }
}
