import { repeatsOf } from '../core/joints/repeatWay.ts'
import { waysFor, type Meeting } from '../core/joints/waysFor.ts'
import type { RepeatsAnswer, RepeatsAsk, WaysAnswer, WaysAsk } from './asks/frameAsks.ts'

export interface WaySearch {
  readonly ways: (ask: WaysAsk) => Promise<WaysAnswer>
  readonly repeats: (ask: RepeatsAsk) => Promise<RepeatsAnswer>
}

/**
 * Ways of loose pieces. What was found on a frame's shapes is kept for as long as the same offers
 * are asked about.
 */
export function createWaySearch(): WaySearch {
  let known: {
    readonly offersId: string
    readonly found: Pick<Meeting, 'offers' | 'shapes'>
  } | null = null
  const sameAs = ({ offersId, frame }: WaysAsk | RepeatsAsk): Meeting => {
    if (known?.offersId !== offersId) {
      const { offers, shapes } = frame
      known = { offersId, found: { offers, shapes } }
    }
    return { ...frame, ...known.found }
  }
  return {
    ways: (ask) => Promise.resolve({ ways: waysFor(ask.loose, sameAs(ask)) }),
    repeats: (ask) => Promise.resolve({ repeats: repeatsOf(ask.way, ask.others, sameAs(ask)) }),
  }
}
