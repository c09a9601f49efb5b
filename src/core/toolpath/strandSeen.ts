import type { LookAtLayer } from './layerLines.ts'
import { beside, isClosed, runsAlong } from './layerLines.ts'
import { planLength } from './layerMoves.ts'
import { spread } from './spread.ts'

/** So much wider than the middle of all skin, a line is a strand. */
const THICKER = 1.12
/** Strands of a layer lie no further apart than so many of their widths. */
const APART = 1.4
/** Shorter lines say little of what lies beside them, in widths. */
const LEAST_LENGTH = 4
/** mm of strands that are enough to tell. */
const ENOUGH_MM = 150

/** How thick strands are against how far they lie apart. */
export interface StrandSeen {
  readonly add: LookAtLayer
  /** Plastic of strands ÷ the area they lie on; null where there are none. */
  readonly share: () => number | null
}

export function strandSeen(): StrandSeen {
  const usual = spread()
  const shares = spread()
  return {
    add(layer, kinds, widths) {
      const { moves, lines } = layer
      for (const move of lines) {
        if (kinds[move] === 'skin') usual.add(widths[move]!, planLength(moves, move))
      }
      const least = THICKER * (usual.quantile(0.5) ?? Infinity)
      for (const move of lines) {
        const width = widths[move]!
        const length = planLength(moves, move)
        if (kinds[move] !== 'skin' || width < least || length < LEAST_LENGTH * width) continue
        for (const side of [1, -1] as const) {
          const next = beside(layer, move, 0.5, side, APART * width).find(
            (meeting) => !isClosed(layer, meeting.move) && runsAlong(layer, move, meeting.move),
          )
          if (next && widths[next.move]! >= least) shares.add(width / next.distanceMm, length)
        }
      }
    },
    share: () => (shares.weight() < 2 * ENOUGH_MM ? null : shares.quantile(0.5)),
  }
}
