import { ROUND_LACK } from '../model/habits.ts'
import type { Bead } from '../model/habits.ts'
import type { LookAtLayer } from './layerLines.ts'
import { beside, isClosed, runsAlong } from './layerLines.ts'
import { planLength } from './layerMoves.ts'

/** Wall lines on either side of a gap line are no further off. mm */
const REACH_MM = 1.5
/** Shorter gap lines say nothing, in widths. */
const LEAST_LENGTH = 1
/** mm of gap lines that are enough to tell, and the share of them that has to agree. */
const ENOUGH_MM = 30
const AGREED = 0.75

/** What stays bare beside a gap line, in what a round line lacks: none of it, or twice that. */
const SQUARE = 0.6
const ROUND = [0.9, 3.2] as const

/** Whether lines have square sides or round ones; see `Bead`. */
export interface BeadSeen {
  readonly add: LookAtLayer
  /** null where there are too few gap lines or they disagree. */
  readonly bead: () => Bead | null
}

/**
 * Lines of one kind lie as far apart as their plastic is wide either way. Gap lines tell: with
 * square sides one fills what two wall lines leave between them; with round ones it lacks what any
 * line does, and as much again stays bare on its sides.
 */
export function beadSeen(): BeadSeen {
  let [roundMm, squareMm] = [0, 0]
  return {
    add(layer, kinds, widths) {
      const { moves, lines, heightMm } = layer
      for (const move of lines) {
        const length = planLength(moves, move)
        if (kinds[move] !== 'gap' || length < LEAST_LENGTH * widths[move]!) continue
        const wallMm = [1, -1].map((side) => {
          const [next] = beside(layer, move, 0.5, side as 1 | -1, REACH_MM)
          const isWall = next && isClosed(layer, next.move) && runsAlong(layer, move, next.move)
          return isWall ? next.distanceMm - widths[next.move]! / 2 : NaN
        })
        const bareMm = wallMm[0]! + wallMm[1]! - widths[move]!
        const lacks = bareMm / (ROUND_LACK * heightMm)
        if (Math.abs(lacks) < SQUARE) squareMm += length
        else if (lacks > ROUND[0] && lacks < ROUND[1]) roundMm += length
      }
    },
    bead() {
      const all = roundMm + squareMm
      if (all < ENOUGH_MM) return null
      if (roundMm > AGREED * all) return 'round'
      return squareMm > AGREED * all ? 'square' : null
    },
  }
}
